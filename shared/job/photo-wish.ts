import type { Photo } from "#shared/job/photo.ts";

/** Said before the bytes are stored: under which id they will lie, and by which key the device knows them. */
export type AnnounceWish = { readonly number: string; readonly id: string; readonly key: string };
/** Said once they are stored. */
export type PhotoWish = AnnounceWish & Omit<Photo, "id" | "at">;
export type RemoveWish = { readonly number: string; readonly id: string; readonly staff: string };

/** Whether to store the bytes, or the photo that the same key has brought already. */
export type Announced = { readonly already: Photo | null };

export type PhotoRefusal =
  | { readonly reason: "no-such-job" }
  | { readonly reason: "not-now" }
  | { readonly reason: "too-many"; readonly most: number }
  /** The bytes took so long that they were given up. */
  | { readonly reason: "came-too-late" };
export type RemoveRefusal = { readonly reason: "no-such-job" } | { readonly reason: "no-such-photo" };
