import { logGamma } from "#shared/measurement/log-gamma.ts";

/** Terms of the continued fraction; on the side it is used it has settled long before, for parameters up to 1000. */
const MOST_TERMS = 500;
const SETTLED = 1e-16;

/**
 * The regularised incomplete beta function I_x(a, b), for a, b > 0 and x from 0 to 1.
 * Continued fraction of the NIST Digital Library of Mathematical Functions, 8.17.22; symmetry 8.17.4.
 * @example incompleteBeta(0.5, 2, 3) // 0.6875, good to about 13 digits
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges fast only below this point.
  return x < (a + 1) / (a + b + 2) ? byFraction(x, a, b) : 1 - byFraction(1 - x, b, a);
}

function byFraction(x: number, a: number, b: number): number {
  const logFactor = a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b);
  return (Math.exp(logFactor) / a) * fraction(x, a, b);
}

/** 1 / (1 + d1 / (1 + d2 / (1 + …))), built up from the front as a running ratio so that it can stop when settled. */
function fraction(x: number, a: number, b: number): number {
  let value = 1;
  let step = 1;
  let ratio = 1;
  for (let term = 1; term <= MOST_TERMS; term += 1) {
    // Steed's form: each convergent differs from the last by `step`.
    ratio = 1 / (1 + coefficient(term, x, a, b) * ratio);
    step *= ratio - 1;
    value += step;
    if (Math.abs(step) < SETTLED * Math.abs(value)) break;
  }
  return value;
}

function coefficient(term: number, x: number, a: number, b: number): number {
  const m = Math.floor(term / 2);
  return term % 2 === 0
    ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
}
