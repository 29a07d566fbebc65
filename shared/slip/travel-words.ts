import type { Outcome } from "#shared/basics/outcome.ts";
import type { NoNutAdvice, NutAdvice } from "#shared/slip/next-nut.ts";
import type { ShimAdvice } from "#shared/slip/next-shims.ts";
import type { NoTravel } from "#shared/slip/next-travel.ts";
import { roundTo } from "#shared/units/round-to.ts";

const NO_ADVICE: Readonly<Record<NoTravel["reason"], string>> = {
  "same-place": "Both readings are from the same place. Two places are needed: move it a little and read again.",
  "does-not-fit":
    "The readings do not fit the springs as they are described. Read again, find zero by hand again, and look for a " +
    "spring the wrong way round; if that does not help, measure the springs and correct the settings.",
  flat: "The springs are on the flat part of their curve, where moving the nut hardly changes the slip. No advice can be given.",
  "past-top":
    "The springs are past the top of their curve, where pressing them more clamps less. No advice can be given: back off.",
  "out-of-reach":
    "The target cannot be reached before the springs come near flat. Look at the washers and the springs.",
};

/** Where the advice comes from, said wherever it is shown. */
export const ADVICE_SOURCE =
  "Source of the advice: DIN EN 16984:2017, with the springs in the shop's settings. Until the shop has measured its " +
  "own there, they are only an example: trust your readings more.";

/** Next angle of the set nut in words. @example sayNut(nextNut(…)) // "Turn to 351° first and read. …" */
export function sayNut(advice: Outcome<NutAdvice, NoNutAdvice>): string {
  if (!advice.ok) return [NO_ADVICE[advice.refusal.reason], ...never(advice.refusal.neverPastDegrees)].join(" ");
  const { turnTo, firstStopDegrees, backOffToDegrees, neverPastDegrees, lbfFtPer10Degrees } = advice.value;
  const start =
    backOffToDegrees === null
      ? `Turn to ${whole(firstStopDegrees)} first and read.`
      : `Back off to ${whole(backOffToDegrees)}, come up to ${whole(firstStopDegrees)} and read.`;
  return [
    start,
    `The target is expected at ${whole(turnTo.value)}, between ${whole(turnTo.low)} and ${whole(turnTo.high)};`,
    `10° change the slip by about ${roundTo(lbfFtPer10Degrees, 2)} lbf·ft.`,
    ...never(neverPastDegrees),
  ].join(" ");
}

/** Next shims in words. @example sayShims(nextShims(…)) // "Put in 1.45 mm of shims in all (0.05 mm more) and read. …" */
export function sayShims(advice: Outcome<ShimAdvice, NoTravel>): string {
  if (!advice.ok) return NO_ADVICE[advice.refusal.reason];
  const { shims, useMm, changeMm, neverPastMm, lbfFtPerStep } = advice.value;
  const change = changeMm === 0 ? "as now" : `${millimetres(Math.abs(changeMm))} ${changeMm > 0 ? "more" : "less"}`;
  return [
    `Put in ${millimetres(useMm)} of shims in all (${change}) and read.`,
    `The target is expected at ${floorTo(shims.value, 2)} mm, between ${floorTo(shims.low, 2)} and ${floorTo(shims.high, 2)} mm;`,
    `one step of shims changes the slip by about ${roundTo(lbfFtPerStep, 2)} lbf·ft.`,
    `Never more than ${floorTo(neverPastMm, 2)} mm: the springs may be near flat there.`,
  ].join(" ");
}

const never = (degrees: number | null): readonly string[] =>
  degrees === null
    ? []
    : [`Never past ${whole(degrees)}: tightened home the nut locks the gear solid, and gear or shaft breaks.`];

const whole = (degrees: number): string => `${floorTo(degrees, 0)}°`;
const millimetres = (value: number): string => `${roundTo(value, 2)} mm`;

/** Places are rounded to the safe side: none that is named lies beyond the limit named with it. */
const floorTo = (value: number, decimals: number): number => Math.floor(value * 10 ** decimals) / 10 ** decimals;
