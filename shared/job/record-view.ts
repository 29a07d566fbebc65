import type { SealedRecord, SealedService } from "#shared/job/record-standing.ts";
import type { RiseObservation } from "#shared/slip/lock-nut-rise.ts";

/** All that the pages of a job's record show. */
export type RecordView = {
  /** Every entry of the job, oldest first; empty = nothing was sealed yet. */
  readonly entries: readonly SealedRecord[];
  /** The services of the unit, oldest first, the job's own last; empty where no record of the job counts. */
  readonly services: readonly SealedService[];
};

/** How the shop's chain stands, for its own page. */
export type ChainStanding = {
  readonly entries: number;
  /** The first entry at which it does not hold; null = it holds to its end. */
  readonly brokenAt: number | null;
  /** Hash of the newest entry. */
  readonly hash: string;
};

/** A lock nut's rise with the job it was seen on. */
export type JobRise = RiseObservation & { readonly job: string };

/** Some lines of the exported chain, and the step to go on after; null = that was all. */
export type ChainLines = { readonly lines: readonly string[]; readonly next: number | null };
