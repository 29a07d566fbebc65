import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { around, coverageFactor, type Estimate } from "#shared/measurement/estimate.ts";
import { normalCdf } from "#shared/measurement/normal-distribution.ts";
import { type Contact, type ContactGuess, contactBelief, type SlipAtTravel } from "#shared/slip/contact-belief.ts";
import {
  frictionShare,
  loadingCurve,
  type SpringStack,
  stackFlatFrom,
  stackRate,
  stackTravel,
} from "#shared/slip/spring-stack.ts";

/** All that the next place of the stack is worked out from. */
export type TravelAsk = {
  readonly stack: SpringStack;
  readonly contact: Contact;
  /** The last two, the newest last. */
  readonly readings: readonly [SlipAtTravel, SlipAtTravel];
  /** Slip wanted, lbf·ft. */
  readonly targetLbfFt: number;
  /** Level of confidence of the intervals. */
  readonly coverage: number;
  readonly mostTravelShare: number;
  readonly flatBelow: number;
};

/** Where to press the stack next. */
export type TravelAdvice = {
  /** Travel at which the slip is on target. At `low` the chance of being over it is small, and `high` is never past the limit. */
  readonly to: Estimate;
  /** The stack may be near flat beyond here: never press it further. */
  readonly neverPastMm: number;
  /** Slip gained by each mm near the target, lbf·ft. */
  readonly slipPerMm: number;
  /** Slip over clamp force, lbf·ft/N: a result. */
  readonly slipPerNewton: Estimate;
};

/** Why no place can be named. `neverPastMm` where so much at least is known. */
export type NoTravel = {
  readonly reason: "same-place" | "does-not-fit" | "flat" | "past-top" | "out-of-reach";
  readonly neverPastMm: number | null;
};

/**
 * The next place to press a clutch's spring stack to, from two readings: by the stack's own curve, never by a friction
 * coefficient, always approached by tightening. None is named where the curve is flat or past its top.
 * @example nextTravel({ stack, contact: { atMm: 0, spreadMm: 0.04 }, readings: [at(0.5, 8.9), at(0.75, 12.9)],
 *   targetLbfFt: 16.5, coverage: 0.95, mostTravelShare: 0.9, flatBelow: 0.1 }) // to about 0.99 mm
 */
export function nextTravel(ask: TravelAsk): Outcome<TravelAdvice, NoTravel> {
  const { stack, contact, readings, targetLbfFt, coverage } = ask;
  const [earlier, latest] = readings;
  if (earlier.travelMm === latest.travelMm) return refuse({ reason: "same-place", neverPastMm: null });
  const belief = contactBelief(stack, contact, readings);
  if (belief.length === 0) return refuse({ reason: "does-not-fit", neverPastMm: null });

  const neverPastMm = lowContact(belief, (1 - coverage) / 2) + ask.mostTravelShare * stackTravel(stack);
  const flatMm = stackFlatFrom(stack, ask.flatBelow);
  const pastHalf = (placeMm: number) => shareOf(belief, (it) => latest.travelMm - it.contactMm > placeMm) > 0.5;
  if (pastHalf(stackFlatFrom(stack, 0))) return refuse({ reason: "past-top", neverPastMm });
  if (pastHalf(flatMm)) return refuse({ reason: "flat", neverPastMm });

  const usableMm = Math.min(flatMm, ask.mostTravelShare * stackTravel(stack));
  const loadAt = loadingCurve(stack);
  const chanceOver = (travelMm: number) =>
    meanOf(belief, (it) => chanceAt(it, loadAt(Math.min(Math.max(0, travelMm - it.contactMm), usableMm)), targetLbfFt));
  if (chanceOver(neverPastMm) < 0.5) {
    return refuse({ reason: usableMm === flatMm ? "flat" : "out-of-reach", neverPastMm });
  }
  const from = belief[0]?.contactMm ?? 0;
  const to = (chance: number) => lowestWith(chance, chanceOver, from, neverPastMm);
  const best = to(0.5);
  return accept({
    to: { value: best, low: to((1 - coverage) / 2), high: to((1 + coverage) / 2) },
    neverPastMm,
    slipPerMm: meanOf(
      belief,
      (it) => (it.slipPerNewton * stackRate(stack, best - it.contactMm)) / (1 - frictionShare(stack)),
    ),
    slipPerNewton: slipPerNewton(belief, coverage),
  });
}

/** So many standard deviations off, a chance is 0 or 1 to 17 digits. */
const CERTAIN = 9;

/** Chance that the slip at a load is on the target or over it, were a guess true; grows with the load. */
function chanceAt({ slipPerNewton, slipPerNewtonSd }: ContactGuess, loadN: number, targetLbfFt: number): number {
  const z = (slipPerNewton - targetLbfFt / loadN) / slipPerNewtonSd;
  return Math.abs(z) > CERTAIN ? Number(z > 0) : normalCdf(z);
}

const BISECTIONS = 30;

/** The lowest place between two where a chance that grows is at least so high; the upper one where none is. */
function lowestWith(chance: number, chanceOver: (at: number) => number, from: number, to: number): number {
  let [under, over] = [from, to];
  for (let halvings = 0; halvings < BISECTIONS; halvings += 1) {
    const middle = (under + over) / 2;
    if (chanceOver(middle) < chance) under = middle;
    else over = middle;
  }
  return over;
}

/** The contact below which so small a share of the belief lies; guesses come in rising order. */
function lowContact(belief: readonly ContactGuess[], share: number): number {
  let sum = 0;
  const found = belief.find(({ weight }) => {
    sum += weight;
    return sum >= share;
  });
  return found?.contactMm ?? Number.NaN;
}

function slipPerNewton(belief: readonly ContactGuess[], coverage: number): Estimate {
  const mean = meanOf(belief, (it) => it.slipPerNewton);
  const variance = meanOf(belief, (it) => it.slipPerNewtonSd ** 2 + (it.slipPerNewton - mean) ** 2);
  return around(mean, coverageFactor(coverage) * Math.sqrt(variance));
}

const meanOf = (belief: readonly ContactGuess[], of: (guess: ContactGuess) => number): number =>
  belief.reduce((sum, guess) => sum + guess.weight * of(guess), 0);

const shareOf = (belief: readonly ContactGuess[], is: (guess: ContactGuess) => boolean): number =>
  meanOf(belief, (guess) => (is(guess) ? 1 : 0));
