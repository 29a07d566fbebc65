import { hasAscii, viewOf } from "#src/http/photo/ascii.ts";

/** Exif 3.0 (CIPA DC-008), 4.6.5: the tag that says how a photo is to be turned; 1 = not at all. */
const ORIENTATION = 0x0112;
const SHORT = 3;
/** Marker, length and "Exif" with two zeros. */
const BEFORE_TIFF = 10;

/** The orientation that an APP1 segment tells, 1 to 8, or null where it tells none. */
export function orientationIn(segment: Uint8Array): number | null {
  if (!hasAscii(segment, 4, "Exif\0\0") || segment.length < BEFORE_TIFF + 8) return null;
  const tiff = viewOf(segment.subarray(BEFORE_TIFF));
  const little = hasAscii(segment, BEFORE_TIFF, "II");
  if (!little && !hasAscii(segment, BEFORE_TIFF, "MM")) return null;
  const directory = tiff.getUint32(4, little);
  if (directory + 2 > tiff.byteLength) return null;
  const count = tiff.getUint16(directory, little);
  for (let entry = 0; entry < count; entry += 1) {
    const at = directory + 2 + entry * 12;
    if (at + 12 > tiff.byteLength) return null;
    if (tiff.getUint16(at, little) !== ORIENTATION) continue;
    const value = tiff.getUint16(at + 8, little);
    return value >= 1 && value <= 8 ? value : null;
  }
  return null;
}

/** An APP1 segment with the orientation as its only tag. */
export function exifWithOrientation(orientation: number): Uint8Array {
  const segment = new Uint8Array(BEFORE_TIFF + 26);
  segment.set([0xff, 0xe1, 0, segment.length - 2, ...ascii("Exif\0\0"), ...ascii("MM"), 0, 42, 0, 0, 0, 8, 0, 1]);
  segment.set([ORIENTATION >> 8, ORIENTATION & 0xff, 0, SHORT, 0, 0, 0, 1, 0, orientation], BEFORE_TIFF + 10);
  return segment;
}

const ascii = (letters: string): readonly number[] => [...letters].map((letter) => letter.charCodeAt(0));
