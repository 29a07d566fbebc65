import * as z from "zod";
import { type BusySpan, busyRuns } from "#shared/calendar/busy-span.ts";
import { BenchId, type CalendarSettings, CalendarSettingsSchema } from "#shared/calendar/calendar-settings.ts";
import { quantum, quantumAt } from "#shared/calendar/quantum.ts";
import { overlaps, type Span } from "#shared/calendar/span.ts";
import { FURTHEST_DAYS } from "#shared/calendar/working-days.ts";
import { instantOf, wallOf } from "#shared/calendar/zone-clock.ts";
import { DateText } from "#shared/craft/answers-schema.ts";
import { plusDays } from "#shared/units/calendar-date.ts";

const TurnsSchema = z
  .array(z.int().min(0))
  .readonly()
  .refine((turns) => turns.length % 2 === 0, "a busy run after every free one");

/** What anybody may read of the shop's bench time, a minute old or more: no job, no owner, only when a bench is busy. */
export const SlotBoardSchema = z
  .strictObject({
    version: z.int().min(0),
    /** Epoch milliseconds. */
    generatedAt: z.int(),
    settings: CalendarSettingsSchema,
    /** A bench's quanta by turns: free ones since the board was made or the last busy run, then busy ones. */
    busy: z.record(BenchId, TurnsSchema).readonly(),
    /** The last day that the board knows. */
    until: DateText,
  })
  .readonly();
/** What the schema reads. */
export type SlotBoard = z.infer<typeof SlotBoardSchema>;

/** What the shop's ledger knows when it makes a board. */
export type BoardSource = {
  readonly version: number;
  /** Epoch milliseconds. */
  readonly now: number;
  readonly settings: CalendarSettings;
  /** Sorted by `from`. */
  readonly busy: readonly BusySpan[];
};

/**
 * Busy time from now until a year ahead. Touching jobs become one run, so the board does not tell how many there are,
 * and why the shop is closed is left out.
 */
export function boardFrom({ version, now, settings, busy }: BoardSource): SlotBoard {
  const until = plusDays(wallOf(settings.zone, now).date, FURTHEST_DAYS);
  const known: Span = { from: quantumAt(now), to: endOfDay(settings.zone, until) };
  const runs = busyRuns(busy);
  return {
    version,
    generatedAt: now,
    settings: { ...settings, closures: settings.closures.map((closure) => ({ ...closure, why: "" })) },
    busy: Object.fromEntries(settings.benches.map(({ id }) => [id, turnsOf(runs.get(id) ?? [], known)])),
    until,
  };
}

/** The board's busy time, sorted by `from`. What lies beyond its last day is unknown, so it counts as busy. */
export function busyOf(board: SlotBoard): readonly BusySpan[] {
  const last = endOfDay(board.settings.zone, board.until);
  const beyond = Number.MAX_SAFE_INTEGER;
  return board.settings.benches
    .flatMap(({ id }): readonly BusySpan[] => [
      ...runsOf(id, quantumAt(board.generatedAt), board.busy[id] ?? []),
      { bench: id, from: last, to: quantum(beyond) },
    ])
    .sort((one, other) => one.from - other.from);
}

function turnsOf(runs: readonly Span[], known: Span): readonly number[] {
  const turns: number[] = [];
  let at: number = known.from;
  for (const run of runs) {
    if (!overlaps(run, known)) continue;
    const from = Math.max(run.from, known.from);
    turns.push(from - at, run.to - from);
    at = run.to;
  }
  return turns;
}

function runsOf(bench: string, first: number, turns: readonly number[]): readonly BusySpan[] {
  const runs: BusySpan[] = [];
  let at = first;
  for (let index = 0; index + 1 < turns.length; index += 2) {
    const from = at + (turns[index] ?? 0);
    at = from + (turns[index + 1] ?? 0);
    runs.push({ bench, from: quantum(from), to: quantum(at) });
  }
  return runs;
}

const endOfDay = (zone: string, date: string) => quantumAt(instantOf(zone, plusDays(date, 1), 0));
