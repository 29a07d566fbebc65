import { minus, type Torque, type TorqueUnit } from "#shared/units/torque.ts";

/**
 * Slip to set before the lock nut, so that the final slip lands on target.
 * Tightening the lock nut adds `rise` (common practice: 1.5 lbf·ft).
 * @example beforeLock(lbfft(18), lbfft(1.5)) // 16.5 lbf.ft
 */
export const beforeLock = <Unit extends TorqueUnit>(target: Torque<Unit>, rise: Torque): Torque<Unit> =>
  minus(target, rise);
