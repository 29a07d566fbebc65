import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { MOST_PHOTOS, type Photo } from "#shared/job/photo.ts";
import type {
  Announced,
  AnnounceWish,
  PhotoRefusal,
  PhotoWish,
  RemoveRefusal,
  RemoveWish,
} from "#shared/job/photo-wish.ts";
import { photoPlaceText } from "#shared/messages/photo-words.ts";
import { OVER } from "#shared/shop/job-state.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import {
  announceBytes,
  claimBytes,
  findPhoto,
  giveUpBytes,
  keepPhotoRow,
  markRemoved,
  photoOfKey,
  photosOf,
} from "#src/ledger/photo-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Bytes that nobody claims by then are dropped; default of this project. */
const CLAIM_WITHIN_MS = 3_600_000;

/** Before any byte is stored: whether the job takes a photo, and whether this one has come already. */
export function announcePhoto(turn: Turn, { number, id, key }: AnnounceWish): Outcome<Announced, PhotoRefusal> {
  const { sql, now } = turn;
  const stored = findJob(sql, { by: "number", number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  const { serial, job } = stored;
  const already = photoOfKey(sql, serial, key);
  if (already !== null) return accept({ already });
  if (OVER.includes(job.state)) return refuse({ reason: "not-now" });
  if (photosOf(sql, serial).length >= MOST_PHOTOS) return refuse({ reason: "too-many", most: MOST_PHOTOS });
  announceBytes(sql, id, now + CLAIM_WITHIN_MS);
  return accept({ already: null });
}

/** Called once the bytes are stored, and never before: a photo that is listed can be shown. */
export function keepPhoto(turn: Turn, wish: PhotoWish): Outcome<Photo, PhotoRefusal> {
  const { sql, now } = turn;
  const { number, key, ...of } = wish;
  const stored = findJob(sql, { by: "number", number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  const { serial } = stored;
  const already = photoOfKey(sql, serial, key);
  if (already !== null) return accept(already);
  if (!claimBytes(sql, of.id)) return refuse({ reason: "came-too-late" });
  const photo = { ...of, at: now };
  keepPhotoRow(sql, serial, key, photo);
  noteEvent(sql, serial, { at: now, who: "shop", what: "photo-added", staff: of.staff, note: photoPlaceText(of) });
  return accept(photo);
}

/** Nobody sees it from here on, and its bytes are dropped. Removed twice, it is gone once. */
export function removePhoto({ sql, now }: Turn, { number, id, staff }: RemoveWish): Outcome<null, RemoveRefusal> {
  const stored = findJob(sql, { by: "number", number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  const photo = findPhoto(sql, stored.serial, id);
  if (photo === null) return refuse({ reason: "no-such-photo" });
  markRemoved(sql, id, now);
  giveUpBytes(sql, id, now);
  noteEvent(sql, stored.serial, { at: now, who: "shop", what: "photo-removed", staff, note: photoPlaceText(photo) });
  return accept(null);
}

/** A job's photo, as the shop asks for it. */
export function photoByNumber({ sql }: Turn, number: string, id: string): Photo | null {
  const stored = findJob(sql, { by: "number", number });
  return stored === null ? null : findPhoto(sql, stored.serial, id);
}

/** The same as its owner's link opens it: no other job's. */
export function photoByLink({ sql, now }: Turn, hash: string, id: string): Photo | null {
  const stored = findJob(sql, { by: "link", hash, now });
  return stored === null ? null : findPhoto(sql, stored.serial, id);
}

export function listPhotos({ sql }: Turn, number: string): readonly Photo[] {
  const stored = findJob(sql, { by: "number", number });
  return stored === null ? [] : photosOf(sql, stored.serial);
}
