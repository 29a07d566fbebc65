import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type JobMoveName, madeByButton } from "#shared/job/job-moves.ts";
import type { UndoRefusal } from "#shared/job/move-refusal.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import { lastStandingMove, noteEvent, type StandingMove } from "#src/ledger/event-rows.ts";
import { findJob, setJobState } from "#src/ledger/job-rows.ts";
import { isMadeAlready } from "#src/ledger/move-job.ts";
import { MOVE_RULES } from "#src/ledger/move-rules.ts";
import { firstRow } from "#src/ledger/row.ts";
import { settleBenchTime } from "#src/ledger/settle-bench-time.ts";
import type { Turn } from "#src/ledger/turn.ts";

export type UndoWish = {
  readonly number: string;
  /** Who of the staff, by name. */
  readonly staff: string;
  /** Why. */
  readonly note: string;
  /** The state that the page showed. */
  readonly ifState: JobState;
};

/**
 * Takes back the newest move that still stands, where a button made it: never the owner's answer, nor the booking.
 * Both stay in the history. Taken back twice in a row, a job goes back two moves; one wish sent twice, only one.
 */
export function undoMove(turn: Turn, wish: UndoWish): Outcome<Job, UndoRefusal> {
  const { number, staff, ifState } = wish;
  const note = wish.note.trim();
  const stored = findJob(turn.sql, { by: "number", number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  const { serial, job } = stored;
  if (isMadeAlready(turn, serial, { what: "undone", fromState: ifState, staff, note })) return accept(job);
  if (job.state !== ifState) return refuse({ reason: "changed-meanwhile", state: job.state });
  const last = lastStandingMove(turn.sql, serial);
  if (last === null || !mayUndo(turn, serial, last)) return refuse({ reason: "nothing-to-undo" });
  if (note === "") return refuse({ reason: "note-needed" });
  setJobState(turn.sql, serial, last.fromState);
  noteEvent(turn.sql, serial, { at: turn.now, who: "shop", what: "undone", staff, note, fromState: job.state });
  settleBenchTime(turn, stored, last.fromState);
  MOVE_RULES[last.what as JobMoveName]?.undone?.(turn, stored, { staff, note });
  const after = findJob(turn.sql, { by: "number", number });
  if (after === null) throw new Error("A job vanished while a move was taken back");
  return accept(after.job);
}

/** Nobody waits for an owner who is not asked any more. */
function mayUndo({ sql }: Turn, serial: number, { what, fromState }: StandingMove): boolean {
  if (!madeByButton(what)) return false;
  const query = "SELECT 1 FROM approval WHERE job = ? AND state = 'open' LIMIT 1";
  return fromState !== "owner-to-decide" || firstRow(sql, query, serial) !== undefined;
}
