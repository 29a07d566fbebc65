import { newtonMetres, type Torque, torqueIn } from "#shared/units/torque.ts";

/** ISO 6789-1:2017, 5.1.5, setting tools of classes A to C: 6 % up to 10 N·m, 4 % above, of the reference value. */
const SMALL = newtonMetres(10);
const PERCENT_SMALL = 6;
const PERCENT_LARGE = 4;

/**
 * How far a click wrench that meets its standard may still be off, in % of the true torque.
 * @example clickLimitPercent(lbfft(18)) // 4
 */
export const clickLimitPercent = (at: Torque): number =>
  torqueIn("N.m", at) > SMALL.value ? PERCENT_LARGE : PERCENT_SMALL;
