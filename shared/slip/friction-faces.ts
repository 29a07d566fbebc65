import type { Estimate } from "#shared/measurement/estimate.ts";
import { type Force, force, forceIn } from "#shared/units/force.ts";
import { lbfft, newtonMetres, type Torque, torqueIn } from "#shared/units/torque.ts";

/** The ring on which the washers rub: radii in mm, and how many faces slip (a gear between two washers has two). */
export type FrictionFaces = {
  readonly outerRadiusMm: number;
  readonly innerRadiusMm: number;
  readonly faces: number;
};

/** New washers press evenly; run-in ones have worn to where pressure times radius is even. */
const PRESSURE_THEORIES = ["uniform-wear", "uniform-pressure"] as const;
export type PressureTheory = (typeof PRESSURE_THEORIES)[number];

/**
 * Radius in mm at which the friction force acts: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering
 * Design, 10th ed., section 16-5 (from memory); the same in R. S. Khurmi and J. K. Gupta, Theory of Machines, ch. 10.
 * @example meanRadius({ outerRadiusMm: 40, innerRadiusMm: 25, faces: 2 }, "uniform-wear") // 32.5
 */
export function meanRadius({ outerRadiusMm: outer, innerRadiusMm: inner }: FrictionFaces, theory: PressureTheory) {
  switch (theory) {
    case "uniform-wear":
      return (outer + inner) / 2;
    case "uniform-pressure":
      return ((2 / 3) * (outer ** 3 - inner ** 3)) / (outer ** 2 - inner ** 2);
  }
}

/**
 * Torque at which the faces slip: the same sources. Handbook friction coefficients scatter by two to one and more,
 * so nothing that advises the bench calls this; it advises from measured slip.
 * @example torqueCapacity(force(4762.1, "N"), 0.2, { outerRadiusMm: 40, innerRadiusMm: 25, faces: 2 }, "uniform-wear") // 61.91 N.m
 */
export const torqueCapacity = (clamp: Force, friction: number, ring: FrictionFaces, theory: PressureTheory) =>
  newtonMetres((ring.faces * friction * forceIn("N", clamp) * meanRadius(ring, theory)) / 1000);

/**
 * Friction coefficient that a measured slip and the clamp force come to, by both theories: a result to be watched over
 * the services, never something to set by.
 * @example frictionFromSlip(newtonMetres(61.9073), force(4762.1, "N"), { outerRadiusMm: 40, innerRadiusMm: 25, faces: 2 })
 *   // uniformWear 0.2, uniformPressure 0.1965
 */
export function frictionFromSlip(slip: Torque, clamp: Force, ring: FrictionFaces) {
  const by = (theory: PressureTheory) =>
    torqueIn("N.m", slip) / torqueIn("N.m", torqueCapacity(clamp, 1, ring, theory));
  return { uniformWear: by("uniform-wear"), uniformPressure: by("uniform-pressure") };
}

/**
 * The same of a slip per newton of clamp, lbf·ft/N, with its interval; by uniform wear, as used washers press.
 * @example frictionOf({ value: 0.00959, low: 0.009, high: 0.0102 }, { outerRadiusMm: 40, innerRadiusMm: 25, faces: 2 })
 *   // value 0.2, low 0.188, high 0.213
 */
export function frictionOf({ value, low, high }: Estimate, ring: FrictionFaces): Estimate {
  const of = (slipPerNewton: number) => frictionFromSlip(lbfft(slipPerNewton), force(1, "N"), ring).uniformWear;
  return { value: of(value), low: of(low), high: of(high) };
}
