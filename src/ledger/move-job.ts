import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { buttonMovesFrom, type JobMoveName, NOTE_NEEDED, stateAfter } from "#shared/job/job-moves.ts";
import type { MoveRefusal } from "#shared/job/move-refusal.ts";
import type { Job, JobEvent } from "#shared/shop/booking.ts";
import { jobNumber } from "#shared/shop/job-number.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import { lastStep, noteEvent, type StandingMove } from "#src/ledger/event-rows.ts";
import { findJob, type StoredJob, setJobState } from "#src/ledger/job-rows.ts";
import type { MoveMaker } from "#src/ledger/move-rule.ts";
import { MOVE_RULES } from "#src/ledger/move-rules.ts";
import { settleBenchTime } from "#src/ledger/settle-bench-time.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** A move that follows from something else: an approval, an answer, an alarm. */
export type MoveMade = MoveMaker & {
  readonly serial: number;
  readonly move: Exclude<JobMoveName, "cancel">;
  /** Whose doing it was; the shop's where it is not said. */
  readonly who?: JobEvent["who"];
};

/** A button on the job's page. */
export type MoveWish = {
  readonly number: string;
  readonly move: JobMoveName;
  /** Who of the staff, by name. */
  readonly staff: string;
  readonly note: string | null;
  /** The state that the page showed. */
  readonly ifState: JobState;
};

/** Makes any move that the table and its rule allow, with its line in the history. */
export function applyMove(turn: Turn, made: MoveMade): Outcome<Job, MoveRefusal> {
  const stored = findJob(turn.sql, { by: "number", number: jobNumber(made.serial) });
  return stored === null ? refuse({ reason: "no-such-job" }) : make(turn, stored, made);
}

/** Makes a move by a button. The same one sent twice finds the job moved already, and gets the same answer. */
export function moveJob(turn: Turn, wish: MoveWish): Outcome<Job, MoveRefusal> {
  const { move, staff, ifState } = wish;
  const note = wish.note?.trim() || null;
  const stored = findJob(turn.sql, { by: "number", number: wish.number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  const { state } = stored.job;
  if (isMadeAlready(turn, stored.serial, { what: move, fromState: ifState, staff, note })) return accept(stored.job);
  if (state !== ifState) return refuse({ reason: "changed-meanwhile", state });
  const allowed = buttonMovesFrom(state);
  if (move === "cancel" || !allowed.includes(move)) return refuse({ reason: "not-allowed", allowed });
  if (note === null && NOTE_NEEDED.includes(move)) return refuse({ reason: "note-needed" });
  return make(turn, stored, { serial: stored.serial, move, staff, note });
}

/** The newest step of the job is this very one: a double tap, or a request that came twice. */
export function isMadeAlready({ sql }: Turn, serial: number, asked: StandingMove): boolean {
  const last = lastStep(sql, serial);
  return (
    last?.what === asked.what &&
    last.fromState === asked.fromState &&
    last.staff === asked.staff &&
    last.note === asked.note
  );
}

function make(turn: Turn, before: StoredJob, made: MoveMade): Outcome<Job, MoveRefusal> {
  const { serial, move, staff, note, who = "shop" } = made;
  const { state, number } = before.job;
  const to = stateAfter(state, move);
  if (to === null) return refuse({ reason: "not-allowed", allowed: buttonMovesFrom(state) });
  const rule = MOVE_RULES[move];
  const block = rule?.guard?.(turn, before) ?? null;
  if (block !== null) return refuse({ reason: "not-ready", block });
  setJobState(turn.sql, serial, to);
  noteEvent(turn.sql, serial, { at: turn.now, who, what: move, staff, note, fromState: state });
  settleBenchTime(turn, before, to);
  rule?.effect?.(turn, before, { staff, note });
  const after = findJob(turn.sql, { by: "number", number });
  if (after === null) throw new Error("A job vanished while it was moved");
  return accept(after.job);
}
