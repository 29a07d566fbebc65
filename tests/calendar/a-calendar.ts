import * as fc from "fast-check";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import {
  type CalendarSettings,
  DEFAULT_CALENDAR,
  type Opening,
  type Weekday,
} from "#shared/calendar/calendar-settings.ts";
import { quantum } from "#shared/calendar/quantum.ts";
import { VERDICTS } from "#shared/triage/verdict.ts";
import { plusDays } from "#shared/units/calendar-date.ts";

/** The default shop, but for what a test is about. */
export const aCalendar = (different: Partial<CalendarSettings> = {}): CalendarSettings => ({
  ...DEFAULT_CALENDAR,
  ...different,
});

const aWeek = (openingsOn: (weekday: Weekday) => readonly Opening[]): CalendarSettings["weekly"] => ({
  1: openingsOn("1"),
  2: openingsOn("2"),
  3: openingsOn("3"),
  4: openingsOn("4"),
  5: openingsOn("5"),
  6: openingsOn("6"),
  7: openingsOn("7"),
});

/** The same openings on each of the week's days that are named; none on the others. */
export const openOn = (days: string, ...openings: readonly (readonly [opens: string, closes: string])[]) =>
  aWeek((weekday) => (days.includes(weekday) ? openings.map(([opens, closes]) => ({ opens, closes })) : []));

export const at = (iso: string): number => {
  const instant = Date.parse(iso);
  if (Number.isNaN(instant)) throw new Error(`${iso} is no instant`);
  return instant;
};

/** Busy time between two instants that lie on the quarter-hour. */
export const busyBetween = (bench: string, from: string, to: string): BusySpan => ({
  bench,
  from: quantum(at(from) / 900_000),
  to: quantum(at(to) / 900_000),
});

export const sorted = (busy: readonly BusySpan[]): readonly BusySpan[] => [...busy].sort((a, b) => a.from - b.from);

/**
 * Zones with every kind of shift: a whole hour, half an hour and south of the line, none, an offset of no whole hour.
 * Openings never begin or end while their clocks change, so that "open" can be told from the wall clock alone.
 */
const zones = fc.constantFrom("America/New_York", "Australia/Lord_Howe", "Asia/Kolkata", "America/St_Johns");
const clock = (quarter: number) =>
  `${String(Math.floor(quarter / 4)).padStart(2, "0")}:${String((quarter % 4) * 15).padStart(2, "0")}`;
const edges = fc.oneof(
  { weight: 1, arbitrary: fc.constant(0) },
  { weight: 9, arbitrary: fc.integer({ min: 16, max: 96 }) },
);
const openings = fc
  .uniqueArray(edges, { minLength: 2, maxLength: 4 })
  .map((quarters) => quarters.sort((a, b) => a - b))
  .map((quarters) =>
    Array.from({ length: Math.floor(quarters.length / 2) }, (_, index) => ({
      from: quarters[2 * index]!,
      to: quarters[2 * index + 1]!,
    })),
  );
const dayOpenings = fc.oneof({ weight: 1, arbitrary: fc.constant([]) }, { weight: 3, arbitrary: openings });

/** Days around both changes of the clocks. */
export const instants = fc
  .constantFrom("2026-10-20T00:00Z", "2027-03-05T00:00Z")
  .chain((start) => fc.integer({ min: 0, max: 8 * 24 * 60 }).map((minutes) => at(start) + minutes * 60_000 + 1234));

/** Small shops that open at least once a week: a bench or two, some closures, jobs short and as long as an opening. */
export const calendars: fc.Arbitrary<CalendarSettings> = fc
  .record({
    zone: zones,
    days: fc.tuple(openings, dayOpenings, dayOpenings, dayOpenings, dayOpenings, dayOpenings, dayOpenings),
    firstWeekday: fc.integer({ min: 0, max: 6 }),
    closures: fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 6 })), { maxLength: 3 }),
    benches: fc.constantFrom(["b1"], ["b1", "b2"]),
    jobs: fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 96 })),
    standard: fc.integer({ min: 0, max: 6 }),
    urgent: fc.integer({ min: 0, max: 2 }),
    offerWindowDays: fc.integer({ min: 1, max: 21 }),
  })
  .map(({ zone, days, firstWeekday, closures, benches, jobs, standard, urgent, offerWindowDays }) => {
    const longest = Math.max(...days.flat().map(({ from, to }) => to - from));
    const [slipCheck, fullRebuild, stopRiding] = jobs.map((quanta) => Math.min(quanta, longest) * 15) as [
      number,
      number,
      number,
    ];
    return {
      ...DEFAULT_CALENDAR,
      zone,
      offerWindowDays,
      weekly: aWeek((weekday) =>
        days[(Number(weekday) + firstWeekday) % 7]!.map(({ from, to }) => ({ opens: clock(from), closes: clock(to) })),
      ),
      closures: closures.flatMap(([start, length]) =>
        ["2026-10-18", "2027-03-03"].map((first) => ({
          from: plusDays(first, start),
          to: plusDays(first, start + length),
          why: "away",
        })),
      ),
      benches: benches.map((id) => ({ id, name: `Bench ${id}` })),
      minutes: { "slip-check": slipCheck, "full-rebuild": fullRebuild, "stop-riding": stopRiding },
      leadWorkingDays: { standard: Math.max(standard, urgent), urgent },
    };
  });

export const verdicts = fc.constantFrom(...VERDICTS);

/** A shop at a moment with some, much or nearly all of its next weeks taken. */
export const searches = fc
  .record({
    settings: calendars,
    now: instants,
    verdict: verdicts,
    fromDays: fc.option(fc.integer({ min: -5, max: 12 }), { nil: undefined }),
    jobs: fc.array(
      fc.record({
        bench: fc.constantFrom("b1", "b2"),
        start: fc.integer({ min: -40, max: 14 * 96 }),
        length: fc.oneof(fc.integer({ min: 1, max: 16 }), fc.constant(300)),
      }),
      { maxLength: 40 },
    ),
  })
  .map(({ settings, now, verdict, fromDays, jobs }) => ({
    settings,
    now,
    verdict,
    busy: sorted(
      jobs.map(({ bench, start, length }) => {
        const from = Math.floor(now / 900_000) + start;
        return { bench, from: quantum(from), to: quantum(from + length) };
      }),
    ),
    ...(fromDays === undefined ? {} : { from: plusDays(new Date(now).toISOString().slice(0, 10), fromDays) }),
  }));
