import { combine } from "#shared/measurement/combined-uncertainty.ts";
import type { SetNutClutch, ShimStackClutch } from "#shared/slip/clutch-data.ts";
import { type NutAdvice, nextNut, type SlipAtNut } from "#shared/slip/next-nut.ts";
import { nextShims, type ShimAdvice, type SlipAtShims } from "#shared/slip/next-shims.ts";
import { resolutionPart } from "#shared/slip/tool-uncertainty.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";
import { sayNut, sayShims } from "#shared/slip/travel-words.ts";

/** One try at the setting as the bench writes it down. Degrees count from where the nut takes up the springs by hand. */
export type SettingTried = {
  readonly nutDegrees: number | null;
  readonly shimMm: number | null;
  /** lbf·ft */
  readonly slip: number;
  /** True where the nut came here by being loosened and was not brought up again, as the sheet asks. */
  readonly loosened?: boolean;
};

/** What the sheet shows after a try: a sentence always, figures where there are any. */
export type BenchAdvice = {
  readonly says: string;
  readonly nut: NutAdvice | null;
  readonly shims: ShimAdvice | null;
};

/** What the advice is given on. */
export type AdviceAsk = {
  /** In the order in which they were made. */
  readonly tries: readonly SettingTried[];
  readonly tool: TorqueTool;
  /** Slip to set now, lbf·ft: before the lock nut on a set-nut unit, final on a shim-stack unit. */
  readonly targetLbfFt: number;
  /** Level of confidence of the intervals, 0 to 1. */
  readonly coverage: number;
};

const TWO_NEEDED = "Two readings at two places are needed before the next place can be worked out.";

/**
 * Advice on a set-nut unit after its tries. The tool's own error counts for nothing here: it shifts every try and the
 * target alike. What counts is its step and the spread of one reading.
 * @example adviseNut(CLUTCH_DEFAULTS.setNut, { tries: [], tool, targetLbfFt: 16.5, coverage: 0.95 }).says // "Two readings …"
 */
export function adviseNut(clutch: SetNutClutch, { tries, tool, targetLbfFt, coverage }: AdviceAsk): BenchAdvice {
  const uncertaintyLbfFt = tryUncertainty(clutch.trySpreadLbfFt, tool);
  const read = tries.flatMap(({ nutDegrees, slip, loosened }): readonly SlipAtNut[] =>
    nutDegrees === null
      ? []
      : [{ nutDegrees, slipLbfFt: slip, uncertaintyLbfFt, reached: loosened === true ? "loosening" : "tightening" }],
  );
  const pair = lastTwoPlaces(read, ({ nutDegrees }) => nutDegrees);
  if (pair === null) return { says: TWO_NEEDED, nut: null, shims: null };
  const advice = nextNut(clutch, pair, targetLbfFt, coverage);
  return { says: sayNut(advice), nut: advice.ok ? advice.value : null, shims: null };
}

/** The same for a shim-stack unit. @example adviseShims(CLUTCH_DEFAULTS.shimStack, ask).shims?.useMm // 1.45 */
export function adviseShims(clutch: ShimStackClutch, { tries, tool, targetLbfFt, coverage }: AdviceAsk): BenchAdvice {
  const uncertaintyLbfFt = tryUncertainty(clutch.trySpreadLbfFt, tool);
  const read = tries.flatMap(({ shimMm, slip }): readonly SlipAtShims[] =>
    shimMm === null ? [] : [{ shimsMm: shimMm, slipLbfFt: slip, uncertaintyLbfFt }],
  );
  const pair = lastTwoPlaces(read, ({ shimsMm }) => shimsMm);
  if (pair === null) return { says: TWO_NEEDED, nut: null, shims: null };
  const advice = nextShims(clutch, pair, targetLbfFt, coverage);
  return { says: sayShims(advice), nut: null, shims: advice.ok ? advice.value : null };
}

const tryUncertainty = (spread: number, tool: TorqueTool): number =>
  combine([{ standardUncertainty: spread, dof: Number.POSITIVE_INFINITY }, resolutionPart(tool)]).standardUncertainty;

/** The newest reading, and before it the newest from another place. */
function lastTwoPlaces<Read>(reads: readonly Read[], placeOf: (read: Read) => number): readonly [Read, Read] | null {
  const latest = reads.at(-1);
  if (latest === undefined) return null;
  const earlier = reads.findLast((read) => placeOf(read) !== placeOf(latest));
  return earlier === undefined ? null : [earlier, latest];
}
