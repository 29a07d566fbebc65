import type { Outcome } from "#shared/basics/outcome.ts";
import type { Photo } from "#shared/job/photo.ts";
import type {
  Announced,
  AnnounceWish,
  PhotoRefusal,
  PhotoWish,
  RemoveRefusal,
  RemoveWish,
} from "#shared/job/photo-wish.ts";

/** What the pages of photos ask of the shop's object. */
export type PhotoShop = {
  readonly photos: (number: string) => Promise<readonly Photo[]>;
  readonly photo: (ask: { readonly number: string; readonly id: string }) => Promise<Photo | null>;
  readonly announcePhoto: (wish: AnnounceWish) => Promise<Outcome<Announced, PhotoRefusal>>;
  readonly keepPhoto: (wish: PhotoWish) => Promise<Outcome<Photo, PhotoRefusal>>;
  readonly removePhoto: (wish: RemoveWish) => Promise<Outcome<null, RemoveRefusal>>;
};
