import type { Outcome } from "#shared/basics/outcome.ts";
import { benchNeed } from "#shared/calendar/bench-job.ts";
import { checkSlot, type Slot, type SlotRefusal } from "#shared/calendar/bookable.ts";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import { parseOfferId } from "#shared/calendar/offer-id.ts";
import { plusQuanta } from "#shared/calendar/quantum.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { isTaken } from "#src/ledger/bench-time-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

type TimeWish = {
  readonly offer: string;
  readonly verdict: Verdict;
  /** By whom the wished-for time may be taken already: the asker's own hold or booking. */
  readonly own: string | null;
  readonly unitHere: boolean;
};

/** May this time be taken? Reads only the wished-for quanta, however full the calendar is. */
export function checkWish(turn: Turn, { offer, verdict, own, unitHere }: TimeWish): Outcome<Slot, SlotRefusal> {
  const settings = turn.settings().settings.calendar;
  const parsed = parseOfferId(offer);
  const busy: BusySpan[] = [];
  if (parsed.ok) {
    const { bench, start } = parsed.value;
    const span = { bench, from: start, to: plusQuanta(start, benchNeed(verdict, settings).quanta) };
    if (isTaken(turn.sql, span, own)) busy.push(span);
  }
  return checkSlot({ settings, busy, offerId: offer, verdict, unitHere, now: turn.now });
}
