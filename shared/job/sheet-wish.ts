import type { SheetEntry, SheetStepId, StoredEntry } from "#shared/job/sheet-entry.ts";
import type { JobState } from "#shared/shop/job-state.ts";

/** What somebody at the bench wants written down. */
export type EntryWish = {
  readonly number: string;
  readonly step: SheetStepId;
  /** The version that the writer had seen; 0 = none. */
  readonly after: number;
  readonly entry: SheetEntry;
  /** Made by the device: what comes twice is kept once. */
  readonly key: string;
  /** Who writes, by name. */
  readonly staff: string;
};

/** Why it was not written. */
export type EntryRefusal =
  | { readonly reason: "no-such-job" }
  | { readonly reason: "not-on-bench"; readonly state: JobState }
  | { readonly reason: "no-such-step" }
  | { readonly reason: "written-meanwhile"; readonly newer: StoredEntry }
  | { readonly reason: "key-reused" };
