import type { BenchFindings } from "#shared/job/bench-findings.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";

/** Where a question to the owner stands; only an open one can be answered. */
export const APPROVAL_STATES = ["open", "approved", "declined", "withdrawn", "expired"] as const;
export type ApprovalState = (typeof APPROVAL_STATES)[number];

/** By what a question was closed: the owner, the limit that the owner gave at the booking, the shop, or its own time. */
export const APPROVAL_CLOSERS = ["owner", "go-ahead", "shop", "time"] as const;
export type ApprovalCloser = (typeof APPROVAL_CLOSERS)[number];

/** More work than was agreed, as the owner is asked for it. Kept as it was shown, whatever settings or sheet say later. */
export type Approval = {
  readonly id: string;
  readonly state: ApprovalState;
  readonly askedAt: number;
  /** Who of the staff asked, by name. */
  readonly askedBy: string;
  readonly offered: AgreedWork;
  /** In the shop's own words. */
  readonly why: string;
  readonly photo: string | null;
  /** What the bench had found when it asked. */
  readonly told: BenchFindings;
  /** Epoch milliseconds; the last one still counts. */
  readonly until: number;
  readonly closed: { readonly at: number; readonly by: ApprovalCloser; readonly note: string | null } | null;
  /** Questions and answers about it, in order. */
  readonly words: readonly ApprovalWord[];
};

export type ApprovalWord = {
  readonly at: number;
  readonly who: "owner" | "shop";
  /** Who of the staff, by name; null = the owner. */
  readonly staff: string | null;
  readonly text: string;
};

/** The longest that either side can say at once, in characters. */
export const WORDS_MOST = 2000;
