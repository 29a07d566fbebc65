import type { BusySpan } from "#shared/calendar/busy-span.ts";
import { type CalendarSettings, DEFAULT_CALENDAR } from "#shared/calendar/calendar-settings.ts";
import { openSpans } from "#shared/calendar/open-spans.ts";
import { plusQuanta } from "#shared/calendar/quantum.ts";
import { FURTHEST_DAYS } from "#shared/calendar/working-days.ts";
import { dayNumber } from "#shared/units/calendar-date.ts";

export const TODAY = "2027-05-03";
/** Half past eight of that Monday in New York. */
export const NOW = Date.parse("2027-05-03T12:30:00Z");

const BENCHES = 3;
/** An hour's job, as a slip check is. */
const JOB_QUANTA = 4;

export const THREE_BENCHES: CalendarSettings = {
  ...DEFAULT_CALENDAR,
  benches: Array.from({ length: BENCHES }, (_, index) => ({ id: `b${index + 1}`, name: `Bench ${index + 1}` })),
};

/**
 * A year's busy time, sorted by `from`: hour after hour is booked, on the first bench without a pause, on the others
 * with a quarter-hour left after every second one, which is too short for any job. Only the last days have room.
 */
export function fullYear(daysFree: number): readonly BusySpan[] {
  return busyYear(
    (day) => day > dayNumber(TODAY) + FURTHEST_DAYS - daysFree,
    () => true,
  );
}

/** The usual case: of all hours that could be booked, some are not, as a fixed dice says. */
export function usualYear(share: number): readonly BusySpan[] {
  let dice = 1;
  return busyYear(
    () => false,
    () => {
      dice = (dice * 48_271) % 2_147_483_647; // MINSTD, Park, Miller and Stockmeyer 1993
      return dice / 2_147_483_647 < share;
    },
  );
}

/** The share of the shop's open quarter-hours that is busy. */
export function busyShare(busy: readonly BusySpan[]): number {
  const open = daysOfYear().flatMap(openSpans(THREE_BENCHES));
  const count = (spans: readonly { readonly from: number; readonly to: number }[]) =>
    spans.reduce((sum, { from, to }) => sum + to - from, 0);
  return count(busy) / (count(open) * BENCHES);
}

function busyYear(isFree: (day: number) => boolean, isBooked: () => boolean): readonly BusySpan[] {
  const spansOn = openSpans(THREE_BENCHES);
  const busy: BusySpan[] = [];
  for (const day of daysOfYear()) {
    if (isFree(day)) continue;
    for (const { from, to } of spansOn(day)) {
      for (const [index, { id: bench }] of THREE_BENCHES.benches.entries()) {
        let start = from;
        for (let job = 1; plusQuanta(start, JOB_QUANTA) <= to; job += 1) {
          const end = plusQuanta(start, JOB_QUANTA);
          if (isBooked()) busy.push({ bench, from: start, to: end });
          start = job % 2 === 0 && index > 0 ? plusQuanta(end, 1) : end;
        }
      }
    }
  }
  return busy.sort((one, other) => one.from - other.from);
}

const daysOfYear = (): readonly number[] =>
  Array.from({ length: FURTHEST_DAYS + 1 }, (_, index) => dayNumber(TODAY) + index);
