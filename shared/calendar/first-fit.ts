import { plusQuanta, type Quantum } from "#shared/calendar/quantum.ts";
import type { Span } from "#shared/calendar/span.ts";

/** Where a job of so many quanta first fits within a span between a bench's busy runs, or null. */
export function firstFit(within: Span, runs: readonly Span[], quanta: number): Quantum | null {
  let start = within.from;
  for (let index = firstEndingAfter(runs, start); index < runs.length; index += 1) {
    const run = runs[index];
    if (run === undefined || run.from >= plusQuanta(start, quanta)) break;
    start = run.to;
  }
  return plusQuanta(start, quanta) <= within.to ? start : null;
}

/** Runs are in order and apart, so their ends are in order too and can be halved through. */
function firstEndingAfter(runs: readonly Span[], instant: Quantum): number {
  let low = 0;
  let high = runs.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((runs[middle]?.to ?? instant) <= instant) low = middle + 1;
    else high = middle;
  }
  return low;
}
