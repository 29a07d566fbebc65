import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { MOST_PHOTO_BYTES, type PhotoType } from "#shared/job/photo.ts";
import { cleanJpeg, isJpeg } from "#src/http/photo/jpeg-segments.ts";
import { cleanPng, isPng } from "#src/http/photo/png-chunks.ts";
import { cleanWebp, isWebp } from "#src/http/photo/webp-chunks.ts";

/** A photo with nothing in it but the picture. */
export type CleanPhoto = { readonly type: PhotoType; readonly bytes: Uint8Array<ArrayBuffer> };

export type PhotoBytesRefusal =
  | { readonly reason: "empty" }
  | { readonly reason: "too-large" }
  | { readonly reason: "not-a-photo" }
  /** It is of an accepted type, but does not end as it should. */
  | { readonly reason: "damaged"; readonly type: PhotoType };

/**
 * What kind of photo the bytes are, whatever their sender calls them, with everything dropped that a viewer does not
 * need: place, time, camera, owner's name, thumbnails, and what some phones hang on behind the picture. Only what is
 * known to serve the picture is kept. The pixels are not touched.
 */
export function cleanPhoto(bytes: Uint8Array): Outcome<CleanPhoto, PhotoBytesRefusal> {
  if (bytes.length === 0) return refuse({ reason: "empty" });
  if (bytes.length > MOST_PHOTO_BYTES) return refuse({ reason: "too-large" });
  const format = FORMATS.find(({ is }) => is(bytes));
  if (format === undefined) return refuse({ reason: "not-a-photo" });
  const { type, clean } = format;
  const kept = clean(bytes);
  return kept === null ? refuse({ reason: "damaged", type }) : accept({ type, bytes: joined(kept) });
}

type Format = {
  readonly type: PhotoType;
  readonly is: (bytes: Uint8Array) => boolean;
  /** The pieces that stay, in order; null where the bytes do not hold together. */
  readonly clean: (bytes: Uint8Array) => readonly Uint8Array[] | null;
};

const FORMATS: readonly Format[] = [
  { type: "image/jpeg", is: isJpeg, clean: cleanJpeg },
  { type: "image/png", is: isPng, clean: cleanPng },
  { type: "image/webp", is: isWebp, clean: cleanWebp },
];

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
