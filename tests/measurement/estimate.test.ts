import normalQuantileOracle from "@stdlib/stats-base-dists-normal-quantile";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { around, coverageFactor } from "#shared/measurement/estimate.ts";
import { normalQuantile } from "#shared/measurement/normal-distribution.ts";

describe("coverageFactor", () => {
  // JCGM 100:2008, table G.1: level of confidence in % and coverage factor.
  it.each([
    [0.6827, 1],
    [0.9, 1.645],
    [0.95, 1.96],
    [0.9545, 2],
    [0.99, 2.576],
    [0.9973, 3],
  ])("of %d is %d", (coverage, factor) => {
    expect(Math.abs(coverageFactor(coverage) - factor)).toBeLessThan(6e-4);
  });

  it("agrees with an independent library", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.9999, noNaN: true }), (coverage) => {
        expect(Math.abs(coverageFactor(coverage) / normalQuantileOracle((1 + coverage) / 2, 0, 1) - 1)).toBeLessThan(
          1e-10,
        );
      }),
    );
  });
});

describe("normalQuantile", () => {
  it("agrees with an independent library far into the tail", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.51, max: 1 - 1e-12, noNaN: true }), (p) => {
        // 1 - p keeps 4 digits at the far end, and so can the quantile only.
        expect(Math.abs(normalQuantile(p) / normalQuantileOracle(p, 0, 1) - 1)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe("around", () => {
  it("reaches as far either way", () => {
    expect(around(3, 0.5)).toEqual({ value: 3, low: 2.5, high: 3.5 });
  });
});
