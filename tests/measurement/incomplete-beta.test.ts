import * as fc from "fast-check";
import { combinations, gamma } from "mathjs";
import { describe, expect, it } from "vitest";
import { incompleteBeta } from "#shared/measurement/incomplete-beta.ts";
import { logGamma } from "#shared/measurement/log-gamma.ts";

describe("incompleteBeta", () => {
  it("is the binomial sum where its parameters are whole", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 20 }),
        (x, a, b) => {
          const trials = a + b - 1;
          let sum = 0;
          for (let hits = a; hits <= trials; hits += 1) {
            sum += combinations(trials, hits) * x ** hits * (1 - x) ** (trials - hits);
          }
          expect(Math.abs(incompleteBeta(x, a, b) - sum)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it("is 0 and 1 at the ends", () => {
    expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1]);
  });
});

describe("logGamma", () => {
  it("agrees with the gamma function of an independent library", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 150, noNaN: true }), (x) => {
        expect(Math.abs(Math.exp(logGamma(x) - Math.log(gamma(x))) - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("grows by ln x from x to x + 1, for large x too", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1000, noNaN: true }), (x) => {
        expect(logGamma(x + 1) - logGamma(x)).toBeCloseTo(Math.log(x), 11);
      }),
    );
  });
});
