import tOracle from "@stdlib/stats-base-dists-t-quantile";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalQuantile } from "#shared/measurement/normal-distribution.ts";
import { tQuantile } from "#shared/measurement/t-distribution.ts";

const dofs = fc.oneof(fc.double({ min: 1, max: 60, noNaN: true }), fc.double({ min: 60, max: 1e5, noNaN: true }));
/** From the least coverage that the settings allow, two-sided, and somewhat less. */
const probabilities = fc.double({ min: 0.6, max: 0.9995, noNaN: true });

// JCGM 100:2008, Table G.2: t for a level of confidence in %, two-sided; two decimals.
const LEVELS = [68.27, 90, 95, 95.45, 99, 99.73];
const TABLE_G2: readonly (readonly [number, ...number[]])[] = [
  [1, 1.84, 6.31, 12.71, 13.97, 63.66],
  [2, 1.32, 2.92, 4.3, 4.53, 9.92, 19.21],
  [3, 1.2, 2.35, 3.18, 3.31, 5.84, 9.22],
  [4, 1.14, 2.13, 2.78, 2.87, 4.6, 6.62],
  [5, 1.11, 2.02, 2.57, 2.65, 4.03, 5.51],
  [6, 1.09, 1.94, 2.45, 2.52, 3.71, 4.9],
  [7, 1.08, 1.89, 2.36, 2.43, 3.5, 4.53],
  [8, 1.07, 1.86, 2.31, 2.37, 3.36, 4.28],
  [9, 1.06, 1.83, 2.26, 2.32, 3.25, 4.09],
  [10, 1.05, 1.81, 2.23, 2.28, 3.17, 3.96],
  [12, 1.04, 1.78, 2.18, 2.23, 3.05, 3.76],
  [16, 1.03, 1.75, 2.12, 2.17, 2.92, 3.54],
  [20, 1.03, 1.72, 2.09, 2.13, 2.85, 3.42],
  [30, 1.02, 1.7, 2.04, 2.09, 2.75, 3.27],
  [50, 1.01, 1.68, 2.01, 2.05, 2.68, 3.16],
  [100, 1.005, 1.66, 1.98, 2.025, 2.626, 3.077],
  [Infinity, 1, 1.645, 1.96, 2, 2.576, 3],
];

describe("tQuantile", () => {
  it.each(TABLE_G2)("gives the row of JCGM 100:2008, Table G.2, for %d degrees of freedom", (dof, ...row) => {
    for (const [column, expected] of row.entries()) {
      const probability = (1 + LEVELS[column]! / 100) / 2;
      expect(Math.abs(tQuantile(probability, dof) - expected), `${LEVELS[column]} %`).toBeLessThanOrEqual(0.0051);
    }
  });

  it("does not cut effective degrees of freedom down to a whole number", () => {
    // Worked out with SciPy 1.17.1 and mpmath for the 16.75 of JCGM 100:2008, H.1, which itself cuts to 16.
    expect(tQuantile(0.995, 16.75)).toBeCloseTo(2.903588053, 9);
  });

  it("agrees with an independent library to 11 digits", () => {
    fc.assert(
      fc.property(probabilities, dofs, (probability, dof) => {
        const oracle = tOracle(probability, dof);
        expect(Math.abs(tQuantile(probability, dof) - oracle)).toBeLessThan(1e-11 * Math.max(1, oracle));
      }),
    );
  });

  it("meets the independent library where the expansion takes over", () => {
    for (const dof of [1999, 2000, 2001]) {
      expect(Math.abs(tQuantile(0.975, dof) / tOracle(0.975, dof) - 1)).toBeLessThan(1e-11);
    }
  });

  it("falls towards the normal one as the degrees of freedom grow, and reaches it", () => {
    fc.assert(
      fc.property(probabilities, dofs, fc.double({ min: 0.1, max: 1000, noNaN: true }), (probability, dof, more) => {
        expect(tQuantile(probability, dof + more)).toBeLessThanOrEqual(tQuantile(probability, dof) * (1 + 1e-12));
        expect(tQuantile(probability, dof)).toBeGreaterThanOrEqual(normalQuantile(probability));
      }),
    );
    expect(tQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
    expect(tQuantile(0.975, 1e300)).toBe(normalQuantile(0.975));
  });
});
