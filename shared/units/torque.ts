import { INCH_M, POUND_FORCE_N } from "#shared/units/pound-force.ts";

/** `lbf.ft` is what the trade reads slip in, `N.m` is the SI unit. */
export type TorqueUnit = "lbf.ft" | "N.m";

/** A torque with its unit, so that a bare number is never taken for the other one. */
export type Torque<Unit extends TorqueUnit = TorqueUnit> = { readonly value: number; readonly unit: Unit };

const INCHES_PER_FOOT = 12;

/** One of each unit in N·m; exact bases after NIST SP 811 (2008), Appendix B. */
const IN_NEWTON_METRES: Readonly<Record<TorqueUnit, number>> = {
  "lbf.ft": POUND_FORCE_N * INCH_M * INCHES_PER_FOOT,
  "N.m": 1,
};

/** @example torque(16.5, "lbf.ft") // { value: 16.5, unit: "lbf.ft" } */
export const torque = <Unit extends TorqueUnit>(value: number, unit: Unit): Torque<Unit> => ({ value, unit });

/** @example lbfft(18) // { value: 18, unit: "lbf.ft" } */
export const lbfft = (value: number): Torque<"lbf.ft"> => torque(value, "lbf.ft");

/** @example newtonMetres(24.4) // { value: 24.4, unit: "N.m" } */
export const newtonMetres = (value: number): Torque<"N.m"> => torque(value, "N.m");

/** The number of a torque in the unit asked for, unrounded. @example torqueIn("N.m", lbfft(10)) // 13.558179483314 */
export const torqueIn = (unit: TorqueUnit, { value, unit: own }: Torque): number =>
  unit === own ? value : (value * IN_NEWTON_METRES[own]) / IN_NEWTON_METRES[unit];

/** The sum, in the unit of the first. @example plus(lbfft(16.5), lbfft(1.5)) // 18 lbf.ft */
export const plus = <Unit extends TorqueUnit>(one: Torque<Unit>, other: Torque): Torque<Unit> =>
  torque(one.value + torqueIn(one.unit, other), one.unit);

/** The difference, in the unit of the first. @example minus(lbfft(18), lbfft(1.5)) // 16.5 lbf.ft */
export const minus = <Unit extends TorqueUnit>(one: Torque<Unit>, other: Torque): Torque<Unit> =>
  torque(one.value - torqueIn(one.unit, other), one.unit);
