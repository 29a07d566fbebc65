import { type Quantum, quantumFrom } from "#shared/calendar/quantum.ts";
import { type JobState, NEEDS_BENCH } from "#shared/shop/job-state.ts";
import { freeQuanta, takeQuanta } from "#src/ledger/bench-time-rows.ts";
import { setFreedFrom } from "#src/ledger/booking-rows.ts";
import type { StoredJob } from "#src/ledger/job-rows.ts";
import { noteBoardChange, type Turn } from "#src/ledger/turn.ts";

/**
 * Bench time follows the state: a job that needs the bench no more gives up what has not begun, and one that needs it
 * again takes that back where nobody has it. Where somebody does, the job goes on without, until it gets another time.
 */
export function settleBenchTime(turn: Turn, before: StoredJob, to: JobState): void {
  if (NEEDS_BENCH.includes(to)) takeBack(turn, before);
  else freeBenchTime(turn, before, quantumFrom(turn.now));
}

/** Gives up what is kept from a quantum on. */
export function freeBenchTime(turn: Turn, { serial, claim, slot, kept }: StoredJob, from: Quantum): void {
  if (kept === null || from >= kept.to) return;
  const first = from > slot.from ? from : slot.from;
  freeQuanta(turn.sql, { ...kept, from: first }, claim);
  setFreedFrom(turn.sql, serial, first);
  noteBoardChange(turn);
}

/** Time that has passed meanwhile is of no use to anybody, so it is not asked for. */
function takeBack(turn: Turn, { serial, claim, slot, kept, job }: StoredJob): void {
  if (job.booking.keepsTime || slot.endsAt <= turn.now) return;
  const given = { bench: slot.bench, from: kept?.to ?? slot.from, to: slot.to };
  if (!takeQuanta(turn.sql, given, claim)) return;
  setFreedFrom(turn.sql, serial, null);
  noteBoardChange(turn);
}
