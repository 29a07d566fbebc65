/** Do these letters stand at that place? @example hasAscii(new Uint8Array([0x52, 0x49]), 0, "RI") // true */
export const hasAscii = (bytes: Uint8Array, at: number, letters: string): boolean =>
  at + letters.length <= bytes.length &&
  [...letters].every((letter, index) => bytes[at + index] === letter.charCodeAt(0));

/** Four letters, as chunks are named. */
export const asciiAt = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));

export const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
