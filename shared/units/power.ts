import { INCH_M, POUND_FORCE_N } from "#shared/units/pound-force.ts";

/** `hp` is the mechanical horsepower of 550 ft·lbf/s. */
export type PowerUnit = "W" | "kW" | "hp";

/** A power with its unit. */
export type Power<Unit extends PowerUnit = PowerUnit> = { readonly value: number; readonly unit: Unit };

const FOOT_POUNDS_PER_SECOND = 550;
const INCHES_PER_FOOT = 12;

/** One of each unit in watts; exact bases after NIST SP 811 (2008), Appendix B. */
const IN_WATTS: Readonly<Record<PowerUnit, number>> = {
  W: 1,
  kW: 1000,
  hp: FOOT_POUNDS_PER_SECOND * POUND_FORCE_N * INCH_M * INCHES_PER_FOOT,
};

/** @example power(18.9, "kW") // { value: 18.9, unit: "kW" } */
export const power = <Unit extends PowerUnit>(value: number, unit: Unit): Power<Unit> => ({ value, unit });

/** The number of a power in the unit asked for, unrounded. @example powerIn("W", power(1, "hp")) // 745.6998715822702 */
export const powerIn = (unit: PowerUnit, { value, unit: own }: Power): number =>
  unit === own ? value : (value * IN_WATTS[own]) / IN_WATTS[unit];
