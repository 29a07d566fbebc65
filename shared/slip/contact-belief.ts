import { loadingCurve, type SpringStack, stackForceBounds, stackTravel } from "#shared/slip/spring-stack.ts";

/** Slip read with the stack pressed to some place; travel in mm along the way that presses it, slip in lbf·ft. */
export type SlipAtTravel = {
  readonly travelMm: number;
  readonly slipLbfFt: number;
  readonly uncertaintyLbfFt: number;
  /** Which way the stack was moved last; let go, it carries less at the same place. */
  readonly reached: "tightening" | "loosening";
};

/** Where the stack is first taken up, as known before any reading: mean and standard deviation, mm of travel. */
export type Contact = { readonly atMm: number; readonly spreadMm: number };

/** One place where the stack may first be taken up, and the slip per newton of clamp that the readings then come to. */
export type ContactGuess = {
  readonly contactMm: number;
  /** Share of the belief; all of them add up to 1. */
  readonly weight: number;
  readonly slipPerNewton: number;
  readonly slipPerNewtonSd: number;
};

const GUESSES = 200;
const REACH_SPREADS = 4;
/** Less than this share of the likeliest guess changes no digit that is shown. */
const NEGLIGIBLE = 1e-9;
/** Default of this project: three standard deviations off all that is known is a contradiction, not chance. */
const CONTRADICTION = 3 ** 2;

/**
 * What readings say of where the stack is taken up and of the slip per newton: Bayes' theorem on a grid of places,
 * normal errors, nothing known of the slip per newton beforehand (flat on its logarithm). The two readings' ratio tells
 * where on the curve they lie, whatever the friction is. Empty where readings, contact and stack contradict each other.
 * @example contactBelief(stack, { atMm: 0, spreadMm: 0.04 }, [{ travelMm: 0.6, … }, { travelMm: 0.9, … }])
 */
export function contactBelief(
  stack: SpringStack,
  contact: Contact,
  readings: readonly [SlipAtTravel, SlipAtTravel],
): readonly ContactGuess[] {
  const travels = readings.map(({ travelMm }) => travelMm);
  const reach = REACH_SPREADS * contact.spreadMm;
  const from = Math.max(contact.atMm - reach, Math.max(...travels) - stackTravel(stack));
  const to = Math.min(contact.atMm + reach, Math.min(...travels));
  if (from >= to) return [];
  const tightened = readings.map((it) => asTightened(stack, it));
  const loadAt = loadingCurve(stack);
  const guesses = Array.from({ length: GUESSES }, (_, index) => {
    const contactMm = from + ((index + 0.5) / GUESSES) * (to - from);
    const fitted = fitSlipPerNewton(loadAt, contactMm, tightened);
    return { contactMm, ...fitted, off: fitted.off + ((contactMm - contact.atMm) / contact.spreadMm) ** 2 };
  });
  const best = Math.min(...guesses.map(({ off }) => off));
  return best > CONTRADICTION
    ? []
    : normalised(guesses.map((it) => ({ ...it, weight: Math.exp((best - it.off) / 2) })));
}

/** Weighted mean of slip over load, and how far the readings are from it, in squared standard deviations. */
function fitSlipPerNewton(loadAt: (travelMm: number) => number, contactMm: number, readings: readonly SlipAtTravel[]) {
  const each = readings.map(({ travelMm, slipLbfFt, uncertaintyLbfFt }) => {
    const load = loadAt(travelMm - contactMm);
    return { value: slipLbfFt / load, precision: (load / uncertaintyLbfFt) ** 2 };
  });
  const precision = each.reduce((sum, it) => sum + it.precision, 0);
  const slipPerNewton = each.reduce((sum, it) => sum + it.value * it.precision, 0) / precision;
  const off = each.reduce((sum, it) => sum + (it.value - slipPerNewton) ** 2 * it.precision, 0);
  return { slipPerNewton, slipPerNewtonSd: Math.sqrt(1 / precision), off };
}

/**
 * A reading on a stack that was let go, as it would be had the stack been pressed there: somewhere between as much and
 * as much more as the friction bounds differ, rectangular (JCGM 100:2008, 4.3.7).
 */
function asTightened(stack: SpringStack, reading: SlipAtTravel): SlipAtTravel {
  if (reading.reached === "tightening") return reading;
  const { loading, unloading } = stackForceBounds(stack, stackTravel(stack));
  const half = (reading.slipLbfFt * (loading / unloading - 1)) / 2;
  return {
    ...reading,
    slipLbfFt: reading.slipLbfFt + half,
    uncertaintyLbfFt: Math.hypot(reading.uncertaintyLbfFt, half / Math.sqrt(3)),
  };
}

function normalised<Guess extends ContactGuess>(guesses: readonly Guess[]): readonly ContactGuess[] {
  const kept = guesses.filter(({ weight }) => weight > NEGLIGIBLE);
  const sum = kept.reduce((total, { weight }) => total + weight, 0);
  return kept.map(({ contactMm, weight, slipPerNewton, slipPerNewtonSd }) => ({
    contactMm,
    weight: weight / sum,
    slipPerNewton,
    slipPerNewtonSd,
  }));
}
