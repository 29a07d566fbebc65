import { type BusySpan, busyRuns } from "#shared/calendar/busy-span.ts";
import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { firstFit } from "#shared/calendar/first-fit.ts";
import { openSpans } from "#shared/calendar/open-spans.ts";
import { type Quantum, quantum } from "#shared/calendar/quantum.ts";
import type { Span } from "#shared/calendar/span.ts";

/** Where a job fits on a day, counted from 1970-01-01. */
export type DayFit = {
  readonly day: number;
  readonly bench: string;
  readonly benchName: string;
  readonly start: Quantum;
};

/** The earliest start on a day, at or after a quantum, on any bench; the bench named first wins a tie. */
export type FindFit = (day: number, notBefore: Quantum) => DayFit | undefined;

/** Reads settings and busy time once, so that each day of a year's search is a few comparisons. */
export function fitFinder(settings: CalendarSettings, busy: readonly BusySpan[], quanta: number): FindFit {
  const spansOn = openSpans(settings);
  const runs = busyRuns(busy);
  const benches = settings.benches.map(({ id, name }) => ({ id, name, runs: runs.get(id) ?? [] }));
  return (day, notBefore) => {
    for (const { from, to } of spansOn(day)) {
      const within: Span = { from: quantum(Math.max(from, notBefore)), to };
      let earliest: DayFit | undefined;
      for (const { id, name, runs } of benches) {
        const start = firstFit(within, runs, quanta);
        if (start === null || (earliest !== undefined && start >= earliest.start)) continue;
        earliest = { day, bench: id, benchName: name, start };
      }
      if (earliest !== undefined) return earliest;
    }
    return undefined;
  };
}
