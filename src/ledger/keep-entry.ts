import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { benchCase } from "#shared/job/sheet-case.ts";
import type { BenchSheet, StoredEntry } from "#shared/job/sheet-entry.ts";
import { SheetEntrySchema } from "#shared/job/sheet-schema.ts";
import { stepsFor } from "#shared/job/sheet-steps.ts";
import type { EntryRefusal, EntryWish } from "#shared/job/sheet-wish.ts";
import type { Job } from "#shared/shop/booking.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { applyMove } from "#src/ledger/move-job.ts";
import { appendEntry, entryOfKey, readSheet } from "#src/ledger/sheet-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/**
 * Writes an entry onto a job's sheet. The first one on a unit that was only received puts it on the bench. Whoever had
 * not seen the newest entry of the step is shown it instead, so that neither is lost unseen. What somebody else wrote on a
 * shared device is not credited to whoever is signed in when it comes.
 */
export function keepEntry(turn: Turn, wish: EntryWish): Outcome<StoredEntry, EntryRefusal> {
  const { sql, now } = turn;
  const found = findJob(sql, { by: "number", number: wish.number });
  if (found === null) return refuse({ reason: "no-such-job" });
  const { serial, job } = found;
  const earlier = entryOfKey(sql, wish.key);
  if (earlier !== null) return earlier.job === serial && isSame(earlier.stored, wish) ? accept(earlier.stored) : REUSED;
  const { step, entry, staff, by } = wish;
  if (by !== null && by !== staff) return refuse({ reason: "other-writer", writer: by, signedIn: staff });
  if (job.state !== "on-bench" && job.state !== "received") return refuse({ reason: "not-on-bench", state: job.state });
  const sheet = readSheet(sql, serial);
  if (!isStepOf(turn, job, sheet, wish)) return refuse({ reason: "no-such-step" });
  const newest = sheet[wish.step];
  if (newest !== undefined && newest.version !== wish.after) {
    return refuse({ reason: "written-meanwhile", newer: newest });
  }
  const stored = { step, version: (newest?.version ?? 0) + 1, at: now, by: staff, entry };
  if (job.state === "received") start(turn, serial, staff);
  appendEntry(sql, serial, wish.key, stored);
  noteEvent(sql, serial, { at: now, who: "shop", what: "sheet-written", staff, note: step });
  return accept(stored);
}

const REUSED = refuse({ reason: "key-reused" } as const);

/** Both are read by the schema, so that neither's order of fields tells them apart. */
const isSame = ({ step, entry }: StoredEntry, wish: EntryWish): boolean =>
  step === wish.step && JSON.stringify(entry) === JSON.stringify(SheetEntrySchema.parse(wish.entry));

/** A unit has the steps of its family and work, and each takes the one kind of entry or why it was skipped. */
function isStepOf({ settings }: Turn, job: Job, sheet: BenchSheet, { step, entry }: EntryWish): boolean {
  const known = stepsFor(benchCase(job, sheet, settings().settings)).find(({ id }) => id === step);
  return known !== undefined && (entry.kind === "skipped" || entry.kind === known.kind);
}

function start(turn: Turn, serial: number, staff: string): void {
  const started = applyMove(turn, { serial, move: "start", staff, note: null });
  if (!started.ok) throw new Error("A unit that was received could not be put on the bench");
}
