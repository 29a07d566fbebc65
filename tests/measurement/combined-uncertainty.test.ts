import * as fc from "fast-check";
import { mean as meanOracle, std } from "mathjs";
import { describe, expect, it } from "vitest";
import { combine, type UncertaintyPart } from "#shared/measurement/combined-uncertainty.ts";
import { repeated } from "#shared/measurement/repeatability.ts";
import { tQuantile } from "#shared/measurement/t-distribution.ts";

const part = (standardUncertainty: number, dof: number): UncertaintyPart => ({ standardUncertainty, dof });
const parts = fc.array(
  fc.record({
    standardUncertainty: fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
    dof: fc.double({ min: 1, max: 1e3, noNaN: true }),
  }),
  { minLength: 1, maxLength: 6 },
);

describe("combine", () => {
  // JCGM 100:2008, example H.1 (end gauge), nm. The digits past the printed ones are worked out from its inputs.
  it("combines the comparator of JCGM 100:2008, H.1.3.2: 9.7 nm", () => {
    const comparator = combine([part(5.8, 24), part(3.9, 5), part(6.7, 8)]);
    expect(comparator.standardUncertainty).toBeCloseTo(9.68194195397, 9);
    expect(comparator.dof).toBeCloseTo(25.4472507774, 8);
  });

  it("combines the end gauge of JCGM 100:2008, H.1.4 and H.1.6: 32 nm, 16.7 degrees of freedom, U99 93 nm", () => {
    const expansionDifference = 5e7 * 0.1 * (1e-6 / Math.sqrt(3));
    const temperatureDifference = 5e7 * 11.5e-6 * (0.05 / Math.sqrt(3));
    const gauge = combine([
      part(25, 18),
      combine([part(5.8, 24), part(3.9, 5), part(6.7, 8)]),
      part(expansionDifference, 50),
      part(temperatureDifference, 2),
    ]);
    expect(gauge.standardUncertainty).toBeCloseTo(31.6637674111, 8);
    expect(gauge.dof).toBeCloseTo(16.7521475092, 8);
    // The printed result cuts 16.7 to 16 and rounds 31.7 to 32.
    expect(Math.abs(tQuantile(0.995, Math.floor(gauge.dof)) * 32 - 93)).toBeLessThan(0.5);
  });

  it("keeps infinite degrees of freedom infinite", () => {
    expect(combine([part(1, Infinity), part(2, Infinity)]).dof).toBe(Infinity);
    expect(combine([part(0, 2), part(2, Infinity)])).toEqual(part(2, Infinity));
  });

  it("is never less than its largest part, nor more than all parts added", () => {
    fc.assert(
      fc.property(parts, (all) => {
        const each = all.map(({ standardUncertainty }) => standardUncertainty);
        const { standardUncertainty } = combine(all);
        expect(standardUncertainty).toBeGreaterThanOrEqual(Math.max(...each) * (1 - 1e-12));
        expect(standardUncertainty).toBeLessThanOrEqual(each.reduce((sum, one) => sum + one, 0) * (1 + 1e-12));
      }),
    );
  });

  it("has degrees of freedom between the fewest of its parts and the sum of them all", () => {
    fc.assert(
      fc.property(parts, (all) => {
        const each = all.map(({ dof }) => dof);
        const { dof } = combine(all);
        expect(dof).toBeGreaterThanOrEqual(Math.min(...each) * (1 - 1e-9));
        expect(dof).toBeLessThanOrEqual(each.reduce((sum, one) => sum + one, 0) * (1 + 1e-9));
      }),
    );
  });
});

describe("repeated", () => {
  const readings = fc.array(fc.double({ min: 5, max: 30, noNaN: true }), { minLength: 3, maxLength: 50 });

  it("agrees with the mean and the sample standard deviation of an independent library", () => {
    fc.assert(
      fc.property(readings, (all) => {
        const { mean, repeatability } = repeated(all);
        expect(mean).toBeCloseTo(meanOracle(all), 11);
        expect(repeatability.standardUncertainty).toBeCloseTo(Number(std(...all)) / Math.sqrt(all.length), 11);
        expect(repeatability.dof).toBe(all.length - 1);
      }),
    );
  });

  it("gives exactly nothing for readings that are all the same", () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 30, noNaN: true }), fc.integer({ min: 3, max: 50 }), (reading, count) => {
        const { mean, repeatability } = repeated(Array.from({ length: count }, () => reading));
        expect(mean).toBe(reading);
        expect(repeatability.standardUncertainty).toBe(0);
      }),
    );
  });
});
