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
  /** Who is signed in, by name. */
  readonly staff: string;
  /** Who wrote it on the device, by name, which may have been somebody else; null = the device does not say. */
  readonly by: string | null;
};

/** Why it was not written. */
export type EntryRefusal =
  | { readonly reason: "no-such-job" }
  | { readonly reason: "not-on-bench"; readonly state: JobState }
  | { readonly reason: "no-such-step" }
  | { readonly reason: "other-writer"; readonly writer: string; readonly signedIn: string }
  | { readonly reason: "written-meanwhile"; readonly newer: StoredEntry }
  | { readonly reason: "key-reused" };
