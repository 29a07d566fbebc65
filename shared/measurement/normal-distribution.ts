/** Beyond this many standard deviations the series loses digits to cancellation and the fraction is quick. */
const FRACTION_FROM = 3;
const FRACTION_TERMS = 60;
const MOST_STEPS = 100;
const SETTLED = 1e-15;

/** Density of the standard normal distribution. */
const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/**
 * Probability that a standard normal value lies below z.
 * @example normalCdf(1.4) // 0.919243340766229
 */
export const normalCdf = (z: number): number => (z > 0 ? 1 - upperTail(z) : upperTail(-z));

/**
 * The z below which a standard normal value lies with probability p, for 0.5 <= p < 1.
 * The upper tail is convex there, so Newton's steps from 0 come up to the root from below and never pass it.
 * @example normalQuantile(0.95) // 1.6448536269514722
 */
export function normalQuantile(p: number): number {
  let z = 0;
  for (let tries = 0; tries < MOST_STEPS; tries += 1) {
    const step = (upperTail(z) - (1 - p)) / density(z);
    z += step;
    if (Math.abs(step) <= SETTLED * z) break;
  }
  return z;
}

/** Probability above z, for z >= 0. */
function upperTail(z: number): number {
  return z < FRACTION_FROM ? 0.5 - density(z) * series(z) : density(z) * millsRatio(z);
}

/** z + z³/3 + z⁵/(3·5) + …: NIST Digital Library of Mathematical Functions, 7.6.2. */
function series(z: number): number {
  let term = z;
  let sum = 0;
  for (let odd = 3; term > SETTLED * 0.1 * sum; odd += 2) {
    sum += term;
    term *= (z * z) / odd;
  }
  return sum;
}

/** Upper tail over density, 1/(z + 1/(z + 2/(z + 3/(z + …)))): the same work, 7.9.1, evaluated from the far end. */
function millsRatio(z: number): number {
  let rest = z;
  for (let term = FRACTION_TERMS; term >= 1; term -= 1) rest = z + term / rest;
  return 1 / rest;
}
