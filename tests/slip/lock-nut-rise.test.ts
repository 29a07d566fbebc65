import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beforeLockLearnt, learnRise, type RiseObservation, type RisePrior } from "#shared/slip/lock-nut-rise.ts";
import { lbfft } from "#shared/units/torque.ts";

const PRIOR: RisePrior = { mean: 1.5, riseSd: 0.3, riseObservationSd: 0.3 };
const rise = (by: number): RiseObservation => ({ before: 16.5, after: 16.5 + by });

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const observations = fc.array(
  fc.record({ before: number(10, 18), by: number(-1, 4) }).map(({ before, by }) => ({ before, after: before + by })),
  { maxLength: 15 },
);
const priors = fc.record({ mean: number(0, 3), riseSd: number(0.05, 1), riseObservationSd: number(0.05, 1) });

describe("learnRise", () => {
  it("starts from the prior: common practice, no published source, and its spread a default of this project", () => {
    expect(learnRise([], PRIOR, 0.95)).toEqual({
      mean: { value: 1.5, low: expect.closeTo(0.912, 3), high: expect.closeTo(2.088, 3) },
      next: { value: 1.5, low: expect.closeTo(0.6684, 3), high: expect.closeTo(2.3316, 3) },
      counted: 0,
      outliers: [],
      doubtful: false,
    });
  });

  it("works two observations out as on paper", () => {
    // Weights 1/0.09 each: (1.5 + 1.8 + 1.7)/3 = 1.6667; sd √(0.09/3) = 0.173205, times 1.959964 = 0.339476.
    const { mean, next } = learnRise([rise(1.8), rise(1.7)], PRIOR, 0.95);
    expect(mean.value).toBeCloseTo(5 / 3, 12);
    expect(mean.high - mean.value).toBeCloseTo(0.339476, 5);
    // √(0.03 + 0.09) = 0.346410
    expect(next.high - next.value).toBeCloseTo(1.959964 * 0.34641, 5);
  });

  it("agrees with a posterior summed up over a grid of rises", () => {
    fc.assert(
      fc.property(observations, priors, (seen, prior) => {
        const learnt = learnRise(seen, prior, 0.95);
        const counted = seen.filter((it) => !learnt.outliers.includes(it)).map(({ before, after }) => after - before);
        const grid = Array.from({ length: 4001 }, (_, index) => -5 + index * 0.0025);
        const logs = grid.map(
          (at) =>
            -(((at - prior.mean) / prior.riseSd) ** 2) / 2 -
            counted.reduce((sum, by) => sum + ((by - at) / prior.riseObservationSd) ** 2 / 2, 0),
        );
        const most = Math.max(...logs);
        const weights = logs.map((log) => Math.exp(log - most));
        const total = weights.reduce((sum, weight) => sum + weight, 0);
        const mean = grid.reduce((sum, at, index) => sum + at * weights[index]!, 0) / total;
        const variance = grid.reduce((sum, at, index) => sum + (at - mean) ** 2 * weights[index]!, 0) / total;
        fc.pre(variance > 1e-4 && Math.abs(mean) < 3 && variance < 0.4);
        expect(learnt.mean.value).toBeCloseTo(mean, 2);
        expect(learnt.mean.high - learnt.mean.value).toBeCloseTo(1.959964 * Math.sqrt(variance), 2);
      }),
      { numRuns: 40 },
    );
  });

  it("lists an outlier, and does not let it count", () => {
    const slipOfThePen = rise(15);
    const fair = [rise(1.6), rise(1.4), rise(1.5), rise(1.7)];
    const learnt = learnRise([...fair, slipOfThePen], PRIOR, 0.95);
    expect(learnt.outliers).toEqual([slipOfThePen]);
    expect(learnt.counted).toBe(4);
    expect(learnt.mean).toEqual(learnRise(fair, PRIOR, 0.95).mean);
    expect(learnt.doubtful).toBe(false);
  });

  it("gives an outlier back with all that came with it", () => {
    const job = { ...rise(9), job: "S-10", date: "2027-05-01" };
    expect(learnRise([job, { ...rise(1.5), job: "S-11", date: "2027-05-02" }], PRIOR, 0.95).outliers).toEqual([job]);
  });

  it("says so where too many do not belong", () => {
    expect(learnRise([rise(1.5), rise(1.6), rise(5)], PRIOR, 0.95).doubtful).toBe(true);
    expect(learnRise([rise(1.5), rise(1.6), rise(1.4), rise(5)], PRIOR, 0.95).doubtful).toBe(false);
  });

  it("is not led astray by a first observation that is wrong", () => {
    const [wrong, right] = [rise(9), rise(1.6)];
    expect(learnRise([wrong], PRIOR, 0.95).outliers).toEqual([wrong]);
    expect(learnRise([wrong, right], PRIOR, 0.95).outliers).toEqual([wrong]);
    expect(learnRise([right, wrong], PRIOR, 0.95).outliers).toEqual([wrong]);
  });

  it("follows a shop whose lock nut truly raises the slip by much more", () => {
    const learnt = learnRise(
      Array.from({ length: 12 }, () => rise(3)),
      PRIOR,
      0.95,
    );
    expect(learnt.outliers).toEqual([]);
    expect(learnt.mean.value).toBeGreaterThan(2.8);
  });

  it("loses no observation, and lies between the prior and what was seen", () => {
    fc.assert(
      fc.property(observations, priors, (seen, prior) => {
        const { mean, counted, outliers } = learnRise(seen, prior, 0.95);
        expect(counted + outliers.length).toBe(seen.length);
        const rises = seen.filter((it) => !outliers.includes(it)).map(({ before, after }) => after - before);
        expect(mean.value).toBeGreaterThanOrEqual(Math.min(prior.mean, ...rises) - 1e-9);
        expect(mean.value).toBeLessThanOrEqual(Math.max(prior.mean, ...rises) + 1e-9);
      }),
    );
  });

  it("does not depend on the order", () => {
    fc.assert(
      fc.property(observations, priors, (seen, prior) => {
        const [one, other] = [learnRise(seen, prior, 0.95), learnRise([...seen].reverse(), prior, 0.95)];
        expect(other.mean.value).toBeCloseTo(one.mean.value, 9);
        expect(other.counted).toBe(one.counted);
      }),
    );
  });

  it("is surer with every observation that counts, and never surer of the next unit than units differ", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20 }), priors, (count, prior) => {
        const width = (n: number) => {
          const { mean } = learnRise(
            Array.from({ length: n }, () => rise(prior.mean)),
            prior,
            0.95,
          );
          return mean.high - mean.low;
        };
        expect(width(count + 1)).toBeLessThan(width(count));
        const { next } = learnRise(
          Array.from({ length: count }, () => rise(prior.mean)),
          prior,
          0.95,
        );
        expect(next.high - next.value).toBeGreaterThan(1.959 * prior.riseObservationSd);
      }),
    );
  });
});

describe("beforeLockLearnt", () => {
  it("sets the learnt rise under the target", () => {
    const { set, low, high } = beforeLockLearnt(lbfft(18), learnRise([], PRIOR, 0.95));
    expect(set).toEqual(lbfft(16.5)); // common practice, no published source
    expect(low.value).toBeCloseTo(15.6684, 3);
    expect(high.value).toBeCloseTo(17.3316, 3);
  });

  it("never sets over the target, whatever was learnt", () => {
    fc.assert(
      fc.property(observations, priors, number(10, 20), (seen, prior, target) => {
        const { set, low, high } = beforeLockLearnt(lbfft(target), learnRise(seen, prior, 0.95));
        for (const { value } of [set, low, high]) expect(value).toBeLessThanOrEqual(target);
        expect(low.value).toBeLessThanOrEqual(high.value);
      }),
    );
  });
});
