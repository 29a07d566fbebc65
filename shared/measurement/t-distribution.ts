import { incompleteBeta } from "#shared/measurement/incomplete-beta.ts";
import { logGamma } from "#shared/measurement/log-gamma.ts";
import { normalQuantile } from "#shared/measurement/normal-distribution.ts";

/** Above this many degrees of freedom the expansion about the normal quantile is good to 11 digits. */
const EXPANSION_FROM = 2000;
const MOST_STEPS = 200;
/** Each step doubles the digits: after one as small as this, the next would be lost in rounding. */
const SETTLED = 1e-11;

/**
 * The t below which a value of Student's distribution lies with probability p, for 0.5 <= p < 1.
 * Degrees of freedom need not be whole (effective ones are not) and may be infinite.
 * @example tQuantile(0.975, 5) // 2.570581835636
 */
export function tQuantile(p: number, dof: number): number {
  const z = normalQuantile(p);
  return dof > EXPANSION_FROM ? expansion(z, dof) : newton(p, dof, z);
}

/**
 * The quantile lies above the normal one, z, and the upper tail is convex there: one Newton step from
 * the expansion lands at or below the root, and the next ones come up to it and never pass it.
 */
function newton(p: number, dof: number, z: number): number {
  let t = expansion(z, dof);
  const logScale = logGamma((dof + 1) / 2) - logGamma(dof / 2) - 0.5 * Math.log(dof * Math.PI);
  for (let tries = 0; tries < MOST_STEPS; tries += 1) {
    const density = Math.exp(logScale - ((dof + 1) / 2) * Math.log1p((t * t) / dof));
    const step = (upperTail(t, dof) - (1 - p)) / density;
    t = Math.max(z, t + step);
    if (Math.abs(step) <= SETTLED * t) break;
  }
  return t;
}

/** Probability above t, for t >= 0: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1. */
const upperTail = (t: number, dof: number): number => incompleteBeta(dof / (dof + t * t), dof / 2, 0.5) / 2;

/** Asymptotic expansion in 1/dof about the normal quantile x, to its third power: the same handbook, 26.7.5. */
function expansion(x: number, dof: number): number {
  const terms = [
    x,
    (x ** 3 + x) / 4,
    (5 * x ** 5 + 16 * x ** 3 + 3 * x) / 96,
    (3 * x ** 7 + 19 * x ** 5 + 17 * x ** 3 - 15 * x) / 384,
  ];
  return terms.reduce((sum, term, power) => sum + term / dof ** power, 0);
}
