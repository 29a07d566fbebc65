import type { Slot } from "#shared/calendar/bookable.ts";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { type DayFit, fitFinder } from "#shared/calendar/day-fit.ts";
import { openSpans } from "#shared/calendar/open-spans.ts";
import { instantOfQuantum, plusQuanta, quantum, quantumAt, quantumFrom } from "#shared/calendar/quantum.ts";
import { contains, overlaps, type Span } from "#shared/calendar/span.ts";
import { FURTHEST_DAYS } from "#shared/calendar/working-days.ts";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import { dateOfDay, dayNumber } from "#shared/units/calendar-date.ts";

/** A unit that is here, the time that its job has, and how much it needs now. */
export type ReplanCase = {
  readonly settings: CalendarSettings;
  /** Time of all other jobs and of open holds, sorted by `from`. */
  readonly busy: readonly BusySpan[];
  readonly slot: Slot;
  /** What of the slot is still kept; null = none. */
  readonly kept: Span | null;
  readonly quanta: number;
  /** Epoch milliseconds. */
  readonly now: number;
};

export type Replanned =
  /** The time that the job has holds the work. */
  | { readonly kind: "as-it-is" }
  /** On the same bench, from the same start. */
  | { readonly kind: "longer"; readonly slot: Slot }
  /** The soonest time on any bench that holds all of it. */
  | { readonly kind: "later"; readonly slot: Slot }
  /** None is free within a year. */
  | { readonly kind: "none" };

/** Bench time for work that grew: where it is if there is room behind it, else the soonest that holds it whole. */
export function replan(it: ReplanCase): Replanned {
  const { slot, kept, quanta, now } = it;
  const isOver = slot.to <= quantumAt(now);
  if (!isOver && kept?.to === slot.to && slot.to >= plusQuanta(slot.from, quanta)) return { kind: "as-it-is" };
  const longer = isOver ? null : inPlace(it);
  if (longer !== null) return { kind: "longer", slot: longer };
  const later = soonest(it);
  return later === undefined ? { kind: "none" } : { kind: "later", slot: slotAt(it, later) };
}

function inPlace({ settings, busy, slot, quanta }: ReplanCase): Slot | null {
  const to = plusQuanta(slot.from, quanta);
  const span: Span = { from: slot.from, to: quantum(Math.max(to, slot.to)) };
  const day = dayNumber(wallOf(settings.zone, slot.startsAt).date);
  const isOpen = openSpans(settings)(day).some((open) => contains(open, span));
  const isBench = settings.benches.some(({ id }) => id === slot.bench);
  const isFree = !busy.some((taken) => taken.bench === slot.bench && overlaps(taken, span));
  return isOpen && isBench && isFree ? { ...slot, to: span.to, endsAt: instantOfQuantum(span.to) } : null;
}

function soonest({ settings, busy, quanta, now }: ReplanCase): DayFit | undefined {
  const findFit = fitFinder(settings, busy, quanta);
  const today = dayNumber(wallOf(settings.zone, now).date);
  for (let day = today; day <= today + FURTHEST_DAYS; day += 1) {
    const fit = findFit(day, quantumFrom(now));
    if (fit !== undefined) return fit;
  }
  return undefined;
}

function slotAt({ settings: { zone }, quanta }: ReplanCase, { bench, benchName, start, day }: DayFit): Slot {
  const to = plusQuanta(start, quanta);
  const startsAt = instantOfQuantum(start);
  return {
    from: start,
    to,
    bench,
    benchName,
    startsAt,
    endsAt: instantOfQuantum(to),
    date: dateOfDay(day),
    minuteOfDay: wallOf(zone, startsAt).minuteOfDay,
    zone,
  };
}
