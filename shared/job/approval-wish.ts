import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { Approval, ApprovalState } from "#shared/job/approval.ts";
import type { BenchFindings } from "#shared/job/bench-findings.ts";
import type { Photo } from "#shared/job/photo.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { JobState } from "#shared/shop/job-state.ts";

/** The shop asks for more work, or goes ahead with it where the owner said that it may. */
export type AskWish = {
  readonly number: string;
  /** Made by the page, so that what is sent twice asks once. */
  readonly id: string;
  readonly work: BenchJob;
  readonly priceMinor: number;
  /** The currency that the page showed: a price is never read in another. */
  readonly currency: string;
  readonly why: string;
  readonly photo: string | null;
  /** The last day to answer, ISO 8601, by the shop's clock. */
  readonly untilDate: string;
  readonly staff: string;
  /** May this person name another price than the shop's own? */
  readonly anyPrice: boolean;
  /** Within the owner's limit, without asking. */
  readonly goAhead: boolean;
};

export type AskRefusal =
  | { readonly reason: "no-such-job" }
  | { readonly reason: "not-on-bench"; readonly state: JobState }
  | { readonly reason: "currency-changed" }
  | { readonly reason: "not-the-list-price" }
  | { readonly reason: "over-go-ahead" }
  | { readonly reason: "no-such-photo" }
  | { readonly reason: "not-a-day" };

/** What an owner's yes did to the bench. */
export type BenchTimeKept = "as-it-is" | "longer" | "later" | "none";

export type Asked = { readonly approval: Approval; readonly job: Job };

export const ANSWERS = ["approve", "decline"] as const;
export type ApprovalAnswer = (typeof ANSWERS)[number];

/** The owner answers by the job's own link. */
export type AnswerWish = {
  readonly linkHash: string;
  readonly approval: string;
  readonly answer: ApprovalAnswer;
};

export type AnswerRefusal =
  | { readonly reason: "no-such-approval" }
  /** It was closed before, otherwise; what the owner said is kept for the shop to read. */
  | { readonly reason: "closed"; readonly state: Exclude<ApprovalState, "open"> };

/** A question or an answer about what is asked. The key is made by the page. */
export type WordWish = { readonly approval: string; readonly text: string; readonly key: string };
export type OwnerWord = WordWish & { readonly linkHash: string };
export type ShopWord = WordWish & { readonly number: string; readonly staff: string };
export type WordRefusal = { readonly reason: "no-such-approval" } | { readonly reason: "too-many-words" };

export type WithdrawWish = { readonly number: string; readonly approval: string; readonly staff: string };

/** What the shop starts from when it asks: what was found, and what each work would cost now. */
export type AskStart = {
  readonly findings: BenchFindings;
  /** Each kind of work at the shop's own price. */
  readonly offers: readonly AgreedWork[];
  /** Photos of the job that may be shown with it. */
  readonly photos: readonly Photo[];
  /** Newest first. */
  readonly approvals: readonly Approval[];
  /** The last day to answer where the shop says nothing else. */
  readonly untilDate: string;
};
