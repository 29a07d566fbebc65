import type { UncertaintyPart } from "#shared/measurement/combined-uncertainty.ts";

export type Repeated = { readonly mean: number; readonly repeatability: UncertaintyPart };

/**
 * Mean of two or more readings and its type A standard uncertainty s/√n with n - 1 degrees of freedom:
 * JCGM 100:2008, 4.2.1 to 4.2.3. Readings that are all the same give exactly 0.
 * @example repeated([17.8, 17.9, 17.85]) // mean 17.85, standardUncertainty 0.0289, dof 2
 */
export function repeated(readings: readonly number[]): Repeated {
  const count = readings.length;
  const first = readings[0] ?? Number.NaN;
  // Counted from the first reading, so that equal readings leave no rounding error behind.
  const mean = first + readings.reduce((sum, reading) => sum + (reading - first), 0) / count;
  const squares = readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
  return {
    mean,
    repeatability: { standardUncertainty: Math.sqrt(squares / (count - 1) / count), dof: count - 1 },
  };
}
