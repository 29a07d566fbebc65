import { around, coverageFactor, type Estimate } from "#shared/measurement/estimate.ts";
import { beforeLock } from "#shared/slip/before-lock.ts";
import { lbfft, type Torque } from "#shared/units/torque.ts";

/** Mean slip before and after the lock nut was tightened, lbf·ft, both read the same way with the same tool. */
export type RiseObservation = { readonly before: number; readonly after: number };

/** How well the rise is known beforehand, and how much it differs from unit to unit: standard deviations, lbf·ft. */
export type RiseSpreads = { readonly riseSd: number; readonly riseObservationSd: number };

/** What is taken as known before the shop has seen any: the mean is the slip settings' `lockNutRise`. */
export type RisePrior = RiseSpreads & { readonly mean: number };

/** What a shop has learnt of one unit family's rise, lbf·ft. */
export type LearntRise<Observation extends RiseObservation = RiseObservation> = {
  /** The rise on the average, posterior mean. */
  readonly mean: Estimate;
  /** Where the rise of the next unit is expected. */
  readonly next: Estimate;
  /** How many observations count. */
  readonly counted: number;
  /** Too far from the others to belong to them. They are shown to the shop and do not count. */
  readonly outliers: readonly Observation[];
  /** More than a quarter do not belong: the spreads do not fit this shop, and no figure learnt from them is to be trusted. */
  readonly doubtful: boolean;
};

/** Default of this project: three standard deviations, as a control chart is commonly drawn. */
const OUTLIER_FROM = 3;
const DOUBTFUL_SHARE = 1 / 4;

/**
 * Learns how much tightening the lock nut raises the slip: normal prior, normal observations of known spread, the
 * conjugate posterior (for one, A. Gelman and others, Bayesian Data Analysis, 3rd ed., section 2.5: from memory).
 * An observation is an outlier where it lies more than three standard deviations of what is to be expected from the
 * weighted median of the prior and all observations, which one slip of the pen cannot move far.
 * @param coverage level of confidence of the intervals, 0.5 to 1
 * @example learnRise([{ before: 16.5, after: 18.3 }, { before: 16.4, after: 18.1 }],
 *   { mean: 1.5, riseSd: 0.3, riseObservationSd: 0.3 }, 0.95).mean // value 1.6667, low 1.3272, high 2.0061
 */
export function learnRise<Observation extends RiseObservation>(
  observations: readonly Observation[],
  prior: RisePrior,
  coverage: number,
): LearntRise<Observation> {
  const centre = weightedMedian(observations, prior);
  const expected = posterior(centre, observations.length, prior);
  const reach = OUTLIER_FROM * Math.hypot(expected.sd, prior.riseObservationSd);
  const isOutlier = (it: Observation) => Math.abs(riseOf(it) - centre) > reach;
  const counted = observations.filter((it) => !isOutlier(it));
  const { mean, sd } = posterior(meanRise(counted), counted.length, prior);
  const factor = coverageFactor(coverage);
  return {
    mean: around(mean, factor * sd),
    next: around(mean, factor * Math.hypot(sd, prior.riseObservationSd)),
    counted: counted.length,
    outliers: observations.filter(isOutlier),
    doubtful: observations.length - counted.length > DOUBTFUL_SHARE * observations.length,
  };
}

/**
 * Slip to set before the lock nut by the learnt rise, with where the final slip's own spread allows it to lie.
 * @example beforeLockLearnt(lbfft(18), learnRise([], { mean: 1.5, riseSd: 0.3, riseObservationSd: 0.3 }, 0.95))
 *   // set 16.5 lbf.ft, between 15.67 and 17.33
 */
export function beforeLockLearnt(target: Torque<"lbf.ft">, { next }: LearntRise) {
  return {
    set: before(next.value),
    low: before(next.high),
    high: before(next.low),
  };

  /** Never over the target, whatever was learnt: over-setting breaks gears, and no lock nut is trusted to take it back. */
  function before(rise: number): Torque<"lbf.ft"> {
    return beforeLock(target, lbfft(Math.max(rise, 0)));
  }
}

const riseOf = ({ before, after }: RiseObservation): number => after - before;

/** Weights are one over the variance: the prior's, and that of a mean of so many observations. */
function posterior(observed: number, count: number, { mean, riseSd, riseObservationSd }: RisePrior) {
  const [priorWeight, weight] = [1 / riseSd ** 2, count / riseObservationSd ** 2];
  return {
    mean: count === 0 ? mean : (mean * priorWeight + observed * weight) / (priorWeight + weight),
    sd: Math.sqrt(1 / (priorWeight + weight)),
  };
}

const meanRise = (observations: readonly RiseObservation[]): number =>
  observations.reduce((sum, it) => sum + riseOf(it), 0) / observations.length;

/** The rise that half of all weight lies on either side of, the prior's mean among them; midway where that is a span. */
function weightedMedian(observations: readonly RiseObservation[], { mean, riseSd, riseObservationSd }: RisePrior) {
  const weighed = [
    { rise: mean, weight: 1 / riseSd ** 2 },
    ...observations.map((it) => ({ rise: riseOf(it), weight: 1 / riseObservationSd ** 2 })),
  ].toSorted((one, other) => one.rise - other.rise);
  const half = weighed.reduce((sum, { weight }) => sum + weight, 0) / 2;
  const reaches = (enough: (sum: number) => boolean) => {
    let sum = 0;
    const found = weighed.find(({ weight }) => {
      sum += weight;
      return enough(sum);
    });
    return found?.rise ?? mean;
  };
  const rounding = 1e-9 * half;
  return (reaches((sum) => sum >= half - rounding) + reaches((sum) => sum > half + rounding)) / 2;
}
