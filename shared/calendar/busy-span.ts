import { type Quantum, quantum } from "#shared/calendar/quantum.ts";
import type { Span } from "#shared/calendar/span.ts";

/** Bench time that is held or booked. */
export type BusySpan = Span & { readonly bench: string };

/** Each bench's busy time as few spans as possible: touching ones are one. `busy` is sorted by `from`. */
export function busyRuns(busy: readonly BusySpan[]): ReadonlyMap<string, readonly Span[]> {
  const byBench = new Map<string, { from: Quantum; to: Quantum }[]>();
  for (const { bench, from, to } of busy) {
    const runs = byBench.get(bench) ?? [];
    const last = runs.at(-1);
    if (last === undefined) byBench.set(bench, runs);
    if (last === undefined || from > last.to) runs.push({ from, to });
    else last.to = quantum(Math.max(last.to, to));
  }
  return byBench;
}
