import { hasAscii, viewOf } from "#src/http/photo/ascii.ts";
import { exifWithOrientation, orientationIn } from "#src/http/photo/exif-orientation.ts";

// Markers of ITU-T T.81, table B.1.
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP14 = 0xee;

export const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === SOI && bytes[2] === 0xff;

/**
 * Frames, tables and scans, the colour profile, and what tells how colours are coded. What lies behind the end of the
 * picture goes too. A photo that has to be turned to be seen upright keeps that one tag, in an Exif of its own.
 */
export function cleanJpeg(bytes: Uint8Array): readonly Uint8Array[] | null {
  const head = [bytes.subarray(0, 2)];
  const body: Uint8Array[] = [];
  let orientation: number | null = null;
  let at = 2;
  let scans = 0;
  for (;;) {
    const marker = markerAt(bytes, at);
    if (marker === null) return null;
    if (marker.code === EOI) break;
    const segment = segmentAt(bytes, marker.at);
    if (segment === null || isStandalone(marker.code)) return null;
    at = marker.at + segment.length;
    if (marker.code === APP0 && isJfif(segment)) head.push(withoutThumbnail(segment));
    else if (marker.code === APP1) orientation ??= orientationIn(segment);
    else if (isKept(marker.code, segment)) body.push(segment);
    if (marker.code !== SOS) continue;
    const end = endOfScan(bytes, at);
    body.push(bytes.subarray(at, end));
    at = end;
    scans += 1;
  }
  if (scans === 0) return null;
  const turned = orientation === null || orientation === 1 ? [] : [exifWithOrientation(orientation)];
  return [...head, ...turned, ...body, new Uint8Array([0xff, EOI])];
}

type Marker = { readonly code: number; readonly at: number };

/** A marker may have any number of fill bytes before it (B.1.1.2). */
function markerAt(bytes: Uint8Array, from: number): Marker | null {
  let at = from;
  if (bytes[at] !== 0xff) return null;
  while (bytes[at + 1] === 0xff) at += 1;
  const code = bytes[at + 1];
  return code === undefined || code === 0 ? null : { code, at };
}

/** Marker, length and content of a segment; null where it would reach beyond the end. */
function segmentAt(bytes: Uint8Array, at: number): Uint8Array | null {
  if (at + 4 > bytes.length) return null;
  const length = viewOf(bytes).getUint16(at + 2);
  return length < 2 || at + 2 + length > bytes.length ? null : bytes.subarray(at, at + 2 + length);
}

/** Markers without a length have no business outside of a scan, but for the end. */
const isStandalone = (code: number): boolean => code === 0x01 || (code >= 0xd0 && code <= SOI);

/** All that decodes the picture lies from SOF0 to EXP; of the rest, the colour profile and the colour transform stay. */
function isKept(code: number, segment: Uint8Array): boolean {
  if (code >= 0xc0 && code <= 0xdf) return true;
  return (code === APP2 && hasAscii(segment, 4, "ICC_PROFILE\0")) || (code === APP14 && hasAscii(segment, 4, "Adobe"));
}

/** Coded data has no marker in it but restarts, and stuffs a zero behind each byte that looks like one (B.1.1.5). */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at !== -1; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next !== 0 && next !== 0xff && !(next !== undefined && next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

/** Marker, length, name, version, density, and the size of a small picture: 18 bytes at least. */
const isJfif = (segment: Uint8Array): boolean => segment.length >= 18 && hasAscii(segment, 4, "JFIF\0");

/** The small picture in a JFIF header may show what was cut away since: its size is set to nothing. */
function withoutThumbnail(segment: Uint8Array): Uint8Array {
  const bare = segment.slice(0, 18);
  bare.set([0, 16], 2);
  bare.set([0, 0], 16);
  return bare;
}
