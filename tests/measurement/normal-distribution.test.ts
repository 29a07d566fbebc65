import normalOracle from "@stdlib/stats-base-dists-normal-cdf";
import * as fc from "fast-check";
import { erf } from "mathjs";
import { describe, expect, it } from "vitest";
import { normalCdf, normalQuantile } from "#shared/measurement/normal-distribution.ts";

const zs = fc.double({ min: -35, max: 8, noNaN: true });

describe("normalCdf", () => {
  it("agrees with an independent library to 12 digits, far into the lower tail too", () => {
    fc.assert(
      fc.property(zs, (z) => {
        expect(Math.abs(normalCdf(z) / normalOracle(z, 0, 1) - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("agrees with the error function of a second library", () => {
    fc.assert(
      fc.property(fc.double({ min: -4, max: 4, noNaN: true }), (z) => {
        expect(Math.abs(normalCdf(z) - (1 + erf(z / Math.SQRT2)) / 2)).toBeLessThan(1e-14);
      }),
    );
  });

  // JCGM 106:2012, 7.x example: breakdown voltage -5.47 V, u 0.05 V, upper limit -5.40 V: 0.92.
  it("gives the 0.92 of the breakdown voltage in JCGM 106:2012, clause 7", () => {
    expect(normalCdf((-5.4 + 5.47) / 0.05)).toBeCloseTo(0.9192, 4);
  });

  it("meets itself where the series hands over to the fraction, and at 0 and infinity", () => {
    expect(normalCdf(-3 + 1e-13) / normalCdf(-3 - 1e-13) - 1).toBeLessThan(1e-11);
    expect([normalCdf(0), normalCdf(Infinity), normalCdf(-Infinity)]).toEqual([0.5, 1, 0]);
  });

  it("never falls", () => {
    fc.assert(
      fc.property(zs, fc.double({ min: 1e-6, max: 5, noNaN: true }), (z, step) => {
        expect(normalCdf(z + step)).toBeGreaterThanOrEqual(normalCdf(z));
      }),
    );
  });
});

describe("normalQuantile", () => {
  // JCGM 106:2012, 7.3, Table 1.
  it.each([
    [0.8, 0.84],
    [0.9, 1.28],
    [0.95, 1.64],
    [0.99, 2.33],
    [0.999, 3.09],
  ])("gives z for a probability of %d as in JCGM 106:2012, Table 1: %d", (probability, z) => {
    expect(Math.abs(normalQuantile(probability) - z)).toBeLessThanOrEqual(0.005);
  });

  it("undoes normalCdf", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 0.9999999, noNaN: true }), (probability) => {
        expect(1 - normalCdf(normalQuantile(probability))).toBeCloseTo(1 - probability, 14);
      }),
    );
  });
});
