import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { benchNeed } from "#shared/calendar/bench-job.ts";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { parseOfferId } from "#shared/calendar/offer-id.ts";
import { openSpans } from "#shared/calendar/open-spans.ts";
import { instantOfQuantum, plusQuanta } from "#shared/calendar/quantum.ts";
import { reachOf } from "#shared/calendar/reach.ts";
import { contains, overlaps, type Span } from "#shared/calendar/span.ts";
import { FURTHEST_DAYS } from "#shared/calendar/working-days.ts";
import { instantOnDay, wallOf } from "#shared/calendar/zone-clock.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { dayNumber } from "#shared/units/calendar-date.ts";

/** Bench time that may be held or booked: wall time, zone and instant together, since a zone's law may change later. */
export type Slot = Span & {
  readonly bench: string;
  readonly benchName: string;
  /** Epoch milliseconds. */
  readonly startsAt: number;
  readonly endsAt: number;
  readonly date: string;
  readonly minuteOfDay: number;
  readonly zone: string;
};

/** Why a slot cannot be had; the first that applies is told. */
export type SlotRefusal =
  | "not-a-slot"
  | "no-such-bench"
  | "in-the-past"
  | "too-far-ahead"
  | "closed"
  /** A unit posted today would not be there yet. */
  | "before-arrival"
  | "taken";

/** A wish for one slot, and all that decides on it. */
export type SlotWish = {
  readonly settings: CalendarSettings;
  /** Only spans that reach into the wished-for time matter; more do no harm. */
  readonly busy: readonly BusySpan[];
  readonly offerId: string;
  readonly verdict: Verdict;
  /** The unit needs no time on the way any more. */
  readonly unitHere?: boolean;
  /** Epoch milliseconds. */
  readonly now: number;
};

/** May this bench time be taken now, for this verdict? Asked again at every step, whatever was offered before. */
export function checkSlot({ settings, busy, offerId, verdict, unitHere, now }: SlotWish): Outcome<Slot, SlotRefusal> {
  const wish = parseOfferId(offerId);
  if (!wish.ok) return refuse("not-a-slot");
  const { start } = wish.value;
  const bench = settings.benches.find(({ id }) => id === wish.value.bench);
  if (bench === undefined) return refuse("no-such-bench");
  const startsAt = instantOfQuantum(start);
  if (startsAt < now) return refuse("in-the-past");
  if (startsAt >= endOfReach(settings.zone, now)) return refuse("too-far-ahead");
  const { date, minuteOfDay } = wallOf(settings.zone, startsAt);
  const span: Span = { from: start, to: plusQuanta(start, benchNeed(verdict, settings).quanta) };
  if (!openSpans(settings)(dayNumber(date)).some((open) => contains(open, span))) return refuse("closed");
  const reach = reachOf(settings, verdict, now, unitHere);
  if (!reach.ok || date < reach.value.firstDay) return refuse("before-arrival");
  if (busy.some((taken) => taken.bench === bench.id && overlaps(taken, span))) return refuse("taken");
  return accept({
    ...span,
    bench: bench.id,
    benchName: bench.name,
    startsAt,
    endsAt: instantOfQuantum(span.to),
    date,
    minuteOfDay,
    zone: settings.zone,
  });
}

/** Midnight after the last day within reach, as an instant: a date too wild for a calendar never gets further. */
function endOfReach(zone: string, now: number): number {
  return instantOnDay(zone, dayNumber(wallOf(zone, now).date) + FURTHEST_DAYS + 1, 0);
}
