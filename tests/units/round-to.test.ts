import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roundTo } from "#shared/units/round-to.ts";

const numbers = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const decimals = fc.integer({ min: 0, max: 6 });

describe("roundTo", () => {
  it.each([
    [16.5 - 4e-15, 2, 16.5, "a float's tail goes"],
    [24.404723069965208, 3, 24.405, "rounds up past the half"],
    [2.5, 0, 3, "a half goes away from zero"],
    [-2.5, 0, -3, "on either side"],
    [-0.001, 2, 0, "never minus zero"],
  ])("rounds %d to %d decimals: %d, because %s", (value, places, rounded) => {
    expect(roundTo(value, places)).toBe(rounded);
  });

  it("moves a number by half a step at most, and a rounded one not at all", () => {
    fc.assert(
      fc.property(numbers, decimals, (value, places) => {
        const rounded = roundTo(value, places);
        expect(Math.abs(rounded - value)).toBeLessThanOrEqual(0.5 * 10 ** -places * (1 + 1e-9));
        expect(roundTo(rounded, places)).toBe(rounded);
        expect(`${rounded}`.split(".")[1]?.length ?? 0).toBeLessThanOrEqual(places);
      }),
    );
  });

  it("never swaps two numbers", () => {
    fc.assert(
      fc.property(numbers, numbers, decimals, (one, other, places) => {
        const [less, more] = one < other ? [one, other] : [other, one];
        expect(roundTo(less, places)).toBeLessThanOrEqual(roundTo(more, places));
      }),
    );
  });
});
