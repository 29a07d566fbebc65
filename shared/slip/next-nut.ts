import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Estimate } from "#shared/measurement/estimate.ts";
import type { SetNutClutch } from "#shared/slip/clutch-data.ts";
import { facesOf, springsOf } from "#shared/slip/clutch-parts.ts";
import type { SlipAtTravel } from "#shared/slip/contact-belief.ts";
import { frictionOf } from "#shared/slip/friction-faces.ts";
import { type NoTravel, nextTravel } from "#shared/slip/next-travel.ts";

/** Slip read with the set nut turned so far in from where it first takes up the springs by hand. */
export type SlipAtNut = Omit<SlipAtTravel, "travelMm"> & { readonly nutDegrees: number };

/** Where to turn the set nut next, in degrees from the same zero as the readings. */
export type NutAdvice = {
  /** Slip on target here. The interval never reaches past `neverPastDegrees`. */
  readonly turnTo: Estimate;
  /** Stop here first and read: where the slip is hardly over yet, or half-way to the best angle where that lies further. */
  readonly firstStopDegrees: number;
  /** Where the nut must be backed off to first, so that it comes to its place by being tightened; null where it does not. */
  readonly backOffToDegrees: number | null;
  readonly neverPastDegrees: number;
  /** Slip gained near the target by each 10° of the nut, lbf·ft. */
  readonly lbfFtPer10Degrees: number;
  /** Friction coefficient that the readings come to: a result, for the record. */
  readonly friction: Estimate;
};

/** Why no angle can be given, with the angle never to be passed where that much is known. */
export type NoNutAdvice = { readonly reason: NoTravel["reason"]; readonly neverPastDegrees: number | null };

/** Default of this project: a quarter of a turn lets the springs go far enough to come back by being pressed. */
const BACK_OFF_DEGREES = 90;

/**
 * The next angle of the set nut, from the last two readings. Home is never advised: nothing past `mostTravelShare` of
 * the way to flat is, counted from the earliest place where the springs may have been taken up.
 * @param targetLbfFt slip to set before the lock nut
 * @param coverage level of confidence of the intervals, 0 to 1
 * @example nextNut(CLUTCH_DEFAULTS.setNut, [tightened(180, 8.6), tightened(270, 12.4)], 16.5, 0.95)
 *   // turn to about 372°, never past 404°
 */
export function nextNut(
  clutch: SetNutClutch,
  readings: readonly [SlipAtNut, SlipAtNut],
  targetLbfFt: number,
  coverage: number,
): Outcome<NutAdvice, NoNutAdvice> {
  const mmPerDegree = clutch.threadPitchMm / 360;
  const degrees = (millimetres: number) => millimetres / mmPerDegree;
  const atTravel = (it: SlipAtNut): SlipAtTravel => ({ ...it, travelMm: it.nutDegrees * mmPerDegree });
  const found = nextTravel({
    stack: springsOf(clutch),
    contact: { atMm: 0, spreadMm: clutch.contactSpreadDegrees * mmPerDegree },
    readings: [atTravel(readings[0]), atTravel(readings[1])],
    targetLbfFt,
    coverage,
    mostTravelShare: clutch.mostTravelShare,
    flatBelow: clutch.flatBelow,
  });
  if (!found.ok) {
    const { reason, neverPastMm } = found.refusal;
    return refuse({ reason, neverPastDegrees: neverPastMm === null ? null : degrees(neverPastMm) });
  }
  const { to, neverPastMm, slipPerMm, slipPerNewton } = found.value;
  const turnTo = { value: degrees(to.value), low: degrees(to.low), high: degrees(to.high) };
  return accept({
    turnTo,
    ...approach(turnTo, readings[1].nutDegrees),
    neverPastDegrees: degrees(neverPastMm),
    lbfFtPer10Degrees: slipPerMm * mmPerDegree * 10,
    friction: frictionOf(slipPerNewton, facesOf(clutch)),
  });
}

/** Nested springs read lower on the way back, so a place behind is come to from further behind. */
function approach({ value, low }: Estimate, nowDegrees: number) {
  const tightening = value >= nowDegrees;
  return {
    firstStopDegrees: tightening ? Math.max(low, (nowDegrees + value) / 2) : low,
    backOffToDegrees: tightening ? null : Math.max(0, low - BACK_OFF_DEGREES),
  };
}
