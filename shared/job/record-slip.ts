import type { MeasuredSlip } from "#shared/job/record-schema.ts";
import type { SheetEntry, SlipEntry } from "#shared/job/sheet-entry.ts";
import type { Band } from "#shared/slip/conformity.ts";
import type { ReadingLevels } from "#shared/slip/reading-rules.ts";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { FEWEST_READINGS } from "#shared/slip/torque-tool.ts";
import { roundTo } from "#shared/units/round-to.ts";

export type SlipAim = { readonly target: number; readonly band: Band };
/** Readings as they are written down. */
export type SlipTaken = Pick<SlipEntry, "readings" | "breakaway" | "tool" | "why">;

/** Finer than any tool shows, and no float's tail is kept. */
const DECIMALS = 4;

/**
 * Readings as they go into the record. Fewer than three say nothing about how far the next would lie off, so they get a
 * mean alone; without an aim nothing is decided. Torques in lbf·ft.
 */
export function measuredSlip(taken: SlipTaken, aim: SlipAim | null, levels: ReadingLevels): MeasuredSlip {
  const { readings, breakaway, tool, why } = taken;
  const written = { readings: [...readings], breakaway, tool, note: why };
  if (readings.length < FEWEST_READINGS) {
    return { ...written, mean: rounded(sum(readings) / readings.length), uncertainty: null, decision: null };
  }
  const read = slipReading({ ...(aim ?? nothingAimedAt(readings)), readings, tool }, levels);
  return {
    ...written,
    mean: rounded(read.mean),
    uncertainty: {
      standard: rounded(read.standardUncertainty),
      expanded: rounded(read.expanded),
      coverage: levels.coverage,
      dof: read.effectiveDof === null ? null : rounded(read.effectiveDof),
    },
    decision: aim && { is: read.decision, says: read.why, probabilityInBand: rounded(read.probabilityInBand) },
  };
}

/** The readings of a step, where it was read at all. */
export const slipTaken = (entry: SheetEntry | undefined): SlipTaken | null => (entry?.kind === "slip" ? entry : null);

/** A band is asked for wherever readings are looked at; what is decided by this one is not kept. */
const nothingAimedAt = ([first = 1]: readonly number[]): SlipAim => ({
  target: first,
  band: { low: 0, high: 2 * first },
});

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const rounded = (value: number): number => roundTo(value, DECIMALS);
