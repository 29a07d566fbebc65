import type { SheetCase } from "#shared/job/sheet-standing.ts";
import type { Band } from "#shared/slip/conformity.ts";
import { provableMeans } from "#shared/slip/provable-means.ts";
import type { SlipDecision } from "#shared/slip/reading-rules.ts";
import type { DialFacts } from "#shared/slip/slip-dial.ts";
import { type SlipReading, slipReading } from "#shared/slip/slip-reading.ts";
import { FEWEST_READINGS, type TorqueTool } from "#shared/slip/torque-tool.ts";

/** Readings as far as they go; a wrench that is not described yet is null. */
export type ReadingsSoFar = { readonly readings: readonly number[]; readonly tool: TorqueTool | null };

/** What readings come to, live at the bench and on the page alike. */
export type SlipShown = {
  readonly dial: DialFacts;
  /** Null while there are fewer than three readings, or no wrench to judge them by. */
  readonly reading: SlipReading | null;
  /** Null where there is no band to judge by. */
  readonly decision: SlipDecision | null;
  /** Which means this wrench can prove; null = none, or no wrench or band to say so by. */
  readonly provable: Band | null;
};

/** Where the plan has no band, the mean and its uncertainty are shown all the same. */
const ANY_BAND = { low: 0, high: 1000 } as const;

/** @example slipShown({ aim, levels }, { readings: [17.8, 17.9], tool }).reading // null: one more is wanted */
export function slipShown(
  { aim, levels }: Pick<SheetCase, "aim" | "levels">,
  { readings, tool }: ReadingsSoFar,
): SlipShown {
  const reading =
    readings.length < FEWEST_READINGS || tool === null
      ? null
      : slipReading({ target: aim?.target ?? mean(readings), band: aim?.band ?? ANY_BAND, readings, tool }, levels);
  return {
    dial: {
      target: aim?.target ?? null,
      band: aim?.band ?? null,
      readings,
      result: reading === null ? null : { mean: reading.mean, expanded: reading.expanded },
    },
    reading,
    decision: aim === null ? null : (reading?.decision ?? null),
    provable: aim === null || tool === null ? null : provableMeans(aim.band, tool, levels),
  };
}

const mean = (readings: readonly number[]): number => readings.reduce((sum, one) => sum + one, 0) / readings.length;
