import { normalCdf, normalQuantile } from "#shared/measurement/normal-distribution.ts";

export type Band = { readonly low: number; readonly high: number };

/** Where the true value may lie, given the measured one. The three add up to 1. */
export type Conformity = { readonly below: number; readonly inBand: number; readonly above: number };

/**
 * Probability of conformity with a band, normal distribution: JCGM 106:2012, clause 7.
 * @param mean measured value, in the unit of the band
 * @param uncertainty its standard uncertainty, more than 0
 * @example conformity(17.85, 0.1, { low: 17.5, high: 18.1 }) // below 0.0002, inBand 0.9936, above 0.0062
 */
export function conformity(mean: number, uncertainty: number, { low, high }: Band): Conformity {
  const toLow = (low - mean) / uncertainty;
  const toHigh = (high - mean) / uncertainty;
  // Subtract the smaller tails, so that a small probability keeps its digits on either side.
  const inBand = toLow + toHigh < 0 ? normalCdf(toHigh) - normalCdf(toLow) : normalCdf(-toLow) - normalCdf(-toHigh);
  return { below: normalCdf(toLow), inBand, above: normalCdf(-toHigh) };
}

/**
 * How far inside a limit the mean must lie for the chance of being past that limit to be `risk` at most:
 * the guard band of JCGM 106:2012, clause 8, for one limit.
 * @example guardBand(0.1, 0.05) // 0.1645
 */
export const guardBand = (uncertainty: number, risk: number): number => normalQuantile(1 - risk) * uncertainty;
