import { asciiAt, viewOf } from "#src/http/photo/ascii.ts";

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** The chunks that make the picture and its colours (PNG, third edition, 11.2 and 11.3); all others are dropped. */
const KEPT = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "cICP", "sBIT", "pHYs"];

export const isPng = (bytes: Uint8Array): boolean => SIGNATURE.every((byte, index) => bytes[index] === byte);

/** What lies behind the end of the picture goes too; of moving pictures only the first one stays. */
export function cleanPng(bytes: Uint8Array): readonly Uint8Array[] | null {
  const view = viewOf(bytes);
  const kept = [bytes.subarray(0, SIGNATURE.length)];
  let at = SIGNATURE.length;
  let hasPicture = false;
  while (at + 12 <= bytes.length) {
    // Length, name, content, check sum.
    const end = at + 12 + view.getUint32(at);
    if (end > bytes.length) return null;
    const name = asciiAt(bytes, at + 4);
    if (KEPT.includes(name)) kept.push(bytes.subarray(at, end));
    hasPicture ||= name === "IDAT";
    if (name === "IEND") return hasPicture ? kept : null;
    at = end;
  }
  return null;
}
