import { asciiAt, hasAscii, viewOf } from "#src/http/photo/ascii.ts";

/** The chunks that make one picture and its colours (RFC 9649, 2.3 to 2.7); all others are dropped, moving pictures too. */
const KEPT = ["VP8 ", "VP8L", "VP8X", "ALPH", "ICCP"];
/** Flags of VP8X that announce Exif and XMP. */
const ANNOUNCES_METADATA = 0x08 | 0x04;
const HEADER_BYTES = 12;

export const isWebp = (bytes: Uint8Array): boolean => hasAscii(bytes, 0, "RIFF") && hasAscii(bytes, 8, "WEBP");

export function cleanWebp(bytes: Uint8Array): readonly Uint8Array[] | null {
  const view = viewOf(bytes);
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length) return null;
  const kept: Uint8Array[] = [];
  let at = HEADER_BYTES;
  let hasPicture = false;
  while (at + 8 <= end) {
    const size = view.getUint32(at + 4, true);
    const next = at + 8 + size + (size % 2);
    if (next > end) return null;
    const name = asciiAt(bytes, at);
    if (KEPT.includes(name)) kept.push(name === "VP8X" ? unannounced(bytes.slice(at, next)) : bytes.subarray(at, next));
    hasPicture ||= name === "VP8 " || name === "VP8L";
    at = next;
  }
  return hasPicture ? [headerFor(kept), ...kept] : null;
}

function unannounced(chunk: Uint8Array): Uint8Array {
  chunk[8] = (chunk[8] ?? 0) & ~ANNOUNCES_METADATA;
  return chunk;
}

function headerFor(chunks: readonly Uint8Array[]): Uint8Array {
  const header = new Uint8Array(HEADER_BYTES);
  header.set([..."RIFF\0\0\0\0WEBP"].map((letter) => letter.charCodeAt(0)));
  viewOf(header).setUint32(
    4,
    chunks.reduce((sum, { length }) => sum + length, 4),
    true,
  );
  return header;
}
