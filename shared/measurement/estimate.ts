import { normalQuantile } from "#shared/measurement/normal-distribution.ts";

/** A figure with the interval it is believed to lie in. */
export type Estimate = { readonly value: number; readonly low: number; readonly high: number };

/** A figure and its interval of so many standard deviations either way. */
export const around = (value: number, halfWidth: number): Estimate => ({
  value,
  low: value - halfWidth,
  high: value + halfWidth,
});

/**
 * Half-width of a two-sided normal interval, in standard deviations: JCGM 100:2008, 6.2 and G.1.3.
 * @param coverage level of confidence, 0 to 1
 * @example coverageFactor(0.95) // 1.96
 */
export const coverageFactor = (coverage: number): number => normalQuantile((1 + coverage) / 2);
