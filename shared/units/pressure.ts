import { INCH_M, POUND_FORCE_N } from "#shared/units/pound-force.ts";

/** Units a boost gauge is read in. */
export const PRESSURE_UNITS = ["psi", "kPa", "bar"] as const;
export type PressureUnit = (typeof PRESSURE_UNITS)[number];

/** A pressure difference with its unit; boost is always gauge pressure. */
export type Pressure = { readonly value: number; readonly unit: PressureUnit };

/** One of each unit in pascals; exact bases after NIST SP 811 (2008), Appendix B. */
const IN_PASCALS: Readonly<Record<PressureUnit, number>> = {
  psi: POUND_FORCE_N / INCH_M ** 2,
  kPa: 1000,
  bar: 100_000,
};

/** @example pressure(1.1, "bar") // { value: 1.1, unit: "bar" } */
export const pressure = (value: number, unit: PressureUnit): Pressure => ({ value, unit });

/** The number of a pressure in the unit asked for, unrounded. @example pressureIn("psi", pressure(1, "bar")) // 14.503773773 */
export const pressureIn = (unit: PressureUnit, { value, unit: own }: Pressure): number =>
  unit === own ? value : (value * IN_PASCALS[own]) / IN_PASCALS[unit];
