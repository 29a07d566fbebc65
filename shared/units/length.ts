import { INCH_M } from "#shared/units/pound-force.ts";

/** `mm` is what drawings and gauges read, `in` what some shops measure in. */
export type LengthUnit = "mm" | "in";

/** A length with its unit. */
export type Length<Unit extends LengthUnit = LengthUnit> = { readonly value: number; readonly unit: Unit };

/** One of each unit in millimetres; exact after NIST SP 811 (2008), Appendix B. */
const IN_MILLIMETRES: Readonly<Record<LengthUnit, number>> = { mm: 1, in: INCH_M * 1000 };

/** @example length(0.5, "in") // { value: 0.5, unit: "in" } */
export const length = <Unit extends LengthUnit>(value: number, unit: Unit): Length<Unit> => ({ value, unit });

/** The number of a length in the unit asked for, unrounded. @example lengthIn("mm", length(0.001, "in")) // 0.0254 */
export const lengthIn = (unit: LengthUnit, { value, unit: own }: Length): number =>
  unit === own ? value : (value * IN_MILLIMETRES[own]) / IN_MILLIMETRES[unit];
