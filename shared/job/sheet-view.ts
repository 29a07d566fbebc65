import type { BenchSheet, StoredEntry } from "#shared/job/sheet-entry.ts";
import type { LastService } from "#shared/job/wear-since.ts";
import type { RiseObservation } from "#shared/slip/lock-nut-rise.ts";

/** What the bench reads beside the job while it writes on its sheet. */
export type SheetView = {
  readonly sheet: BenchSheet;
  /** What was written over since, oldest first. */
  readonly earlier: readonly StoredEntry[];
  /** What tightening the lock nut did to earlier units of this family, newest first. */
  readonly lastService: LastService | null;
  readonly rises: readonly RiseObservation[];
};
