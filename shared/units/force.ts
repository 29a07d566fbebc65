import { POUND_FORCE_N } from "#shared/units/pound-force.ts";

/** Units a clamp force is said in. */
export type ForceUnit = "N" | "lbf";

/** A force with its unit. */
export type Force<Unit extends ForceUnit = ForceUnit> = { readonly value: number; readonly unit: Unit };

/** One of each unit in newtons; exact after NIST SP 811 (2008), Appendix B. */
const IN_NEWTONS: Readonly<Record<ForceUnit, number>> = { N: 1, lbf: POUND_FORCE_N };

/** @example force(800, "N") // { value: 800, unit: "N" } */
export const force = <Unit extends ForceUnit>(value: number, unit: Unit): Force<Unit> => ({ value, unit });

/** The number of a force in the unit asked for, unrounded. @example forceIn("N", force(1, "lbf")) // 4.4482216152605 */
export const forceIn = (unit: ForceUnit, { value, unit: own }: Force): number =>
  unit === own ? value : (value * IN_NEWTONS[own]) / IN_NEWTONS[unit];
