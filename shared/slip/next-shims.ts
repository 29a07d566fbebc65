import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Estimate } from "#shared/measurement/estimate.ts";
import type { ShimStackClutch } from "#shared/slip/clutch-data.ts";
import { facesOf, springsOf } from "#shared/slip/clutch-parts.ts";
import type { SlipAtTravel } from "#shared/slip/contact-belief.ts";
import { frictionOf } from "#shared/slip/friction-faces.ts";
import { type NoTravel, nextTravel } from "#shared/slip/next-travel.ts";

/** Slip read with shims of so many mm in all, the nut tightened home: so the springs are always pressed last. */
export type SlipAtShims = {
  readonly shimsMm: number;
  readonly slipLbfFt: number;
  readonly uncertaintyLbfFt: number;
};

/** How many mm of shims to put in next. */
export type ShimAdvice = {
  /** Shims in all for the slip to be on target. The interval never reaches past `neverPastMm`. */
  readonly shims: Estimate;
  /** Shims in all to put in now: whole steps from those in it, rounded down, since over is not fine. */
  readonly useMm: number;
  /** To add, or to take out where negative. */
  readonly changeMm: number;
  readonly neverPastMm: number;
  /** Slip gained near the target by one step of shims, lbf·ft. */
  readonly lbfFtPerStep: number;
  /** Friction coefficient that the readings come to: a result, for the record. */
  readonly friction: Estimate;
};

/** So much of a step is lost in floating-point division, and is no step missed. */
const ROUNDING = 1e-6;

/**
 * The next shims of a shim-stack unit, from the last two readings.
 * @param targetLbfFt final slip
 * @param coverage level of confidence of the interval, 0 to 1
 * @example nextShims(CLUTCH_DEFAULTS.shimStack, [at(1, 8.6), at(1.25, 12.4)], 13, 0.95) // shims about 1.29, use 1.25
 */
export function nextShims(
  clutch: ShimStackClutch,
  readings: readonly [SlipAtShims, SlipAtShims],
  targetLbfFt: number,
  coverage: number,
): Outcome<ShimAdvice, NoTravel> {
  const found = nextTravel({
    stack: springsOf(clutch),
    contact: { atMm: clutch.contactShimsMm, spreadMm: clutch.contactSpreadMm },
    readings: [atTravel(readings[0]), atTravel(readings[1])],
    targetLbfFt,
    coverage,
    mostTravelShare: clutch.mostTravelShare,
    flatBelow: clutch.flatBelow,
  });
  if (!found.ok) return refuse(found.refusal);
  const { to, neverPastMm, slipPerMm, slipPerNewton } = found.value;
  const nowMm = readings[1].shimsMm;
  const changeMm = Math.floor((to.value - nowMm) / clutch.shimStepMm + ROUNDING) * clutch.shimStepMm;
  return accept({
    shims: to,
    useMm: nowMm + changeMm,
    changeMm,
    neverPastMm,
    lbfFtPerStep: slipPerMm * clutch.shimStepMm,
    friction: frictionOf(slipPerNewton, facesOf(clutch)),
  });
}

const atTravel = ({ shimsMm, ...slip }: SlipAtShims): SlipAtTravel => ({
  ...slip,
  travelMm: shimsMm,
  reached: "tightening",
});
