import type { Source } from "#shared/basics/source.ts";
import type { NamedShelf, Shelf } from "#shared/shop/shelf.ts";
import type { JobPart } from "#shared/shop/stock.ts";
import type { Balance, StockChange } from "#shared/shop/stock-book.ts";

/** Who wishes it; the page makes the key, so that a form sent twice is one wish. */
type Asked = { readonly staff: string; readonly key: string };

export type ReceiveWish = Asked & { readonly shelf: Shelf; readonly count: number; readonly note: string | null };
export type CountWish = Asked & { readonly shelf: Shelf; readonly found: number; readonly note: string };
export type StockRefusal = { readonly reason: "no-such-shelf" };

/** A part taken from a shelf for a job, or put back on it. */
export type UseWish = Asked & { readonly number: string; readonly shelf: Shelf; readonly count: number };
/** More of a part for a job than was planned, or less (below zero). */
export type LayOutWish = Asked & { readonly number: string; readonly part: string; readonly change: number };

export type JobPartRefusal =
  | { readonly reason: "no-such-job" }
  | { readonly reason: "no-such-shelf" }
  /** The unit is not in the shop, or the job is over. */
  | { readonly reason: "not-now" }
  /** Not so many were used, or planned and not used. */
  | { readonly reason: "not-so-many"; readonly most: number };

/** One part of a job with the shelves it may come from. */
export type JobPartLine = JobPart & {
  readonly name: string;
  /** Why it is laid out; null where the bench added it. */
  readonly source: Source | null;
  readonly shelves: readonly (NamedShelf & Balance & { readonly used: number })[];
};

/** One entry of a shelf's book. */
export type StockEntry = {
  readonly kind: StockChange["kind"];
  readonly change: number;
  readonly onHand: number;
  readonly countAgain: boolean;
  readonly job: string | null;
  readonly at: number;
  readonly staff: string;
  readonly note: string | null;
};
