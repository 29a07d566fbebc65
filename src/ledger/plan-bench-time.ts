import { unreachable } from "#shared/basics/unreachable.ts";
import { quantaFor } from "#shared/calendar/quantum.ts";
import { replan } from "#shared/calendar/replan.ts";
import type { BenchTimeKept } from "#shared/job/approval-wish.ts";
import { swapQuanta } from "#src/ledger/bench-time-rows.ts";
import { moveBookingRow } from "#src/ledger/booking-rows.ts";
import { endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { type StoredJob, setNeedsBenchTime } from "#src/ledger/job-rows.ts";
import { noteBoardChange, noteReceiptChange, type Turn } from "#src/ledger/turn.ts";

/** Finds bench time for work that grew and takes it; where none is free the job keeps what it has, and says so. */
export function planBenchTime(turn: Turn, stored: StoredJob, minutes: number): BenchTimeKept {
  endOverdueHolds(turn);
  const { kept, slot } = stored;
  const busy = turn.busy(turn.now).filter((span) => !(span.bench === kept?.bench && span.from === kept.from));
  const { calendar } = turn.settings().settings;
  const planned = replan({ settings: calendar, busy, slot, kept, quanta: quantaFor(minutes), now: turn.now });
  const done = take(turn, stored, planned);
  setNeedsBenchTime(turn.sql, stored.serial, done === "none");
  return done;
}

function take(turn: Turn, { serial, claim, kept, job }: StoredJob, planned: ReturnType<typeof replan>): BenchTimeKept {
  switch (planned.kind) {
    case "as-it-is":
    case "none":
      return planned.kind;
    case "longer":
    case "later": {
      const given = kept === null ? null : { span: kept, claim };
      if (!swapQuanta(turn.sql, given, { span: planned.slot, claim })) return "none";
      const { id, changeableUntil } = job.booking;
      const version = moveBookingRow(turn.sql, { id, changeableUntil, slot: planned.slot });
      if (planned.kind === "later") noteEvent(turn.sql, serial, { at: turn.now, who: "shop", what: "moved" });
      noteBoardChange(turn);
      noteReceiptChange(turn, id, version);
      return planned.kind;
    }
    default:
      return unreachable(planned);
  }
}
