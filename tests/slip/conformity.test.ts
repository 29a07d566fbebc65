import normalOracle from "@stdlib/stats-base-dists-normal-cdf";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conformity, guardBand } from "#shared/slip/conformity.ts";

const means = fc.double({ min: 5, max: 30, noNaN: true });
const uncertainties = fc.double({ min: 0.005, max: 3, noNaN: true });
const BAND = { low: 17.5, high: 18.1 };

describe("conformity", () => {
  // JCGM 106:2012, clause 7, worked out for limits 9 to 11, u 0.4; the risk is 1 - probability of conformity.
  it.each([
    [10, 0.0124193],
    [10.5, 0.1057382],
    [12, 0.9937903],
  ])("gives a mean of %d the specific risk %d of being outside", (mean, risk) => {
    expect(1 - conformity(mean, 0.4, { low: 9, high: 11 }).inBand).toBeCloseTo(risk, 6);
  });

  it("agrees with an independent normal distribution", () => {
    fc.assert(
      fc.property(means, uncertainties, (mean, uncertainty) => {
        const { below, inBand, above } = conformity(mean, uncertainty, BAND);
        expect(below).toBeCloseTo(normalOracle(BAND.low, mean, uncertainty), 12);
        expect(above).toBeCloseTo(1 - normalOracle(BAND.high, mean, uncertainty), 12);
        expect(below + inBand + above).toBeCloseTo(1, 12);
        expect(inBand).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("keeps the digits of a small probability on either side of the band", () => {
    const mirrored = (mean: number) => conformity(mean, 0.1, { low: -1, high: 1 }).inBand;
    expect(mirrored(3)).toBeCloseTo(normalOracle(-20, 0, 1), 100);
    expect(mirrored(3) / normalOracle(-20, 0, 1)).toBeCloseTo(1, 9);
    expect(mirrored(-3)).toBe(mirrored(3));
  });
});

describe("guardBand", () => {
  // JCGM 106:2012, clause 8, one limit: risk left at the acceptance limit for w = r U, U = 2u.
  it.each([
    [0, 0.5, "simple acceptance"],
    [0.83, 0.04846, "ISO 14253-1:2017, under 5 %"],
    [1, 0.02275, "ILAC-G8:09/2019, under 2.5 %"],
    [1.5, 0.00135, "three sigma"],
  ])("of %d U leaves a risk of %d: %s", (r, risk) => {
    const uncertainty = 0.1;
    expect(guardBand(uncertainty, risk)).toBeCloseTo(r * 2 * uncertainty, 3);
  });

  it("is the distance from a limit at which exactly the allowed risk is left", () => {
    fc.assert(
      fc.property(uncertainties, fc.double({ min: 0.001, max: 0.25, noNaN: true }), (uncertainty, risk) => {
        const inside = BAND.high - guardBand(uncertainty, risk);
        expect(conformity(inside, uncertainty, BAND).above).toBeCloseTo(risk, 12);
      }),
    );
  });
});
