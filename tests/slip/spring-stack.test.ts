import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { discForce } from "#shared/slip/disc-spring.ts";
import {
  frictionShare,
  loadingCurve,
  type SpringStack,
  shareLostByWear,
  stackFlatFrom,
  stackForce,
  stackForceBounds,
  stackHeight,
  stackRate,
  stackTravel,
} from "#shared/slip/spring-stack.ts";
import { discs, smallDiscs } from "#tests/slip/disc-arbitraries.ts";

const disc = { outerMm: 50, innerMm: 25.4, thicknessMm: 2, freeHeightMm: 3.4 }; // B 50 of DIN EN 16983

const aStack = (changes: Partial<SpringStack> = {}): SpringStack => ({
  disc,
  nested: 1,
  packets: 1,
  layerFriction: 0,
  edgeFriction: 0,
  ...changes,
});

const arrangements = fc.record({ nested: fc.integer({ min: 1, max: 6 }), packets: fc.integer({ min: 1, max: 12 }) });
const share = fc.double({ min: 0.01, max: 1, noNaN: true });

describe("a stack of disc springs", () => {
  // Worked out apart from this code, each disc pressed by 1.05 mm.
  it.each([
    [1, 1, 4762.1, 1.05],
    [2, 1, 9524.2, 1.05],
    [1, 4, 4762.1, 4.2],
    [2, 3, 9524.2, 3.15],
  ])("of %d nested in %d packets carries %d N at %d mm", (nested, packets, load, travel) => {
    expect(Math.abs(stackForce(aStack({ nested, packets }), travel) - load)).toBeLessThan(0.051);
  });

  it("of two nested in three packets is 16.2 mm high and 4.2 mm from flat", () => {
    expect(stackHeight(aStack({ nested: 2, packets: 3 }))).toBeCloseTo(16.2, 12);
    expect(stackTravel(aStack({ nested: 2, packets: 3 }))).toBeCloseTo(4.2, 12);
  });

  // Friction factors in the ranges of DIN EN 16984; loads worked out apart from this code.
  it.each([
    [2, 0.02, 0.04, 10_132, 8985],
    [4, 0.02, 0.04, 21_165, 17_317],
    [4, 0.003, 0.02, 19_617, 18_512],
  ])(
    "of %d nested, wM %d, wR %d, reads %d N being pressed and %d N let go",
    (nested, layerFriction, edgeFriction, on, off) => {
      const { loading, unloading } = stackForceBounds(aStack({ nested, layerFriction, edgeFriction }), 1.05);
      expect(Math.abs(loading - on)).toBeLessThan(1);
      expect(Math.abs(unloading - off)).toBeLessThan(1);
    },
  );

  it("loses 26.7 % of its clamp by 0.35 mm of wear", () => {
    expect(shareLostByWear(aStack(), 1.05, 0.35)).toBeCloseTo(1 - 3490.8 / 4762.1, 4);
  });

  it("carries as many loads as discs are nested, at as many travels as packets are in series", () => {
    fc.assert(
      fc.property(discs, arrangements, share, (each, arrangement, part) => {
        const stack = aStack({ disc: each, ...arrangement });
        const travel = part * stackTravel(stack);
        const one = discForce(each, travel / arrangement.packets);
        expect(stackForce(stack, travel)).toBeCloseTo(arrangement.nested * one, 6);
      }),
    );
  });

  it("has the slope of its load as its rate", () => {
    fc.assert(
      fc.property(discs, arrangements, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (each, arrangement, part) => {
        const stack = aStack({ disc: each, ...arrangement });
        const [at, step] = [part * stackTravel(stack), 1e-4 * stackTravel(stack)];
        const slope = (stackForce(stack, at + step) - stackForce(stack, at - step)) / (2 * step);
        expect(Math.abs(stackRate(stack, at) - slope)).toBeLessThan(1e-6 * stackRate(stack, 0));
      }),
    );
  });

  it("carries more being pressed than without friction, and less let go; friction adds with every layer", () => {
    fc.assert(
      fc.property(
        arrangements,
        fc.double({ min: 0.001, max: 0.03, noNaN: true }),
        share,
        (arrangement, factor, part) => {
          const stack = aStack({ ...arrangement, layerFriction: factor, edgeFriction: factor });
          const travel = part * stackTravel(stack);
          const { loading, unloading } = stackForceBounds(stack, travel);
          expect(loading).toBeGreaterThan(stackForce(stack, travel));
          expect(loadingCurve(stack)(travel)).toBeCloseTo(loading, 6);
          expect(unloading).toBeLessThan(stackForce(stack, travel));
          expect(frictionShare({ ...stack, nested: stack.nested + 1 })).toBeGreaterThan(frictionShare(stack));
        },
      ),
    );
  });

  it("loses more the more it wears, and all of it at last", () => {
    fc.assert(
      fc.property(smallDiscs, share, share, (each, part, wear) => {
        const stack = aStack({ disc: each });
        const travel = part * stackTravel(stack);
        const lost = shareLostByWear(stack, travel, wear * travel);
        expect(lost).toBeGreaterThan(shareLostByWear(stack, travel, 0.9 * wear * travel));
        expect(shareLostByWear(stack, travel, travel)).toBe(1);
        expect(shareLostByWear(stack, travel, 2 * travel)).toBe(1);
      }),
    );
  });

  it("goes flat where each of its discs does", () => {
    const flat = aStack({ disc: { outerMm: 25, innerMm: 12.2, thicknessMm: 0.5, freeHeightMm: 1.3 }, packets: 3 });
    // Height over thickness 1.6: the rate is 0 at 1.6 - √((1.6² - 2)/3) thicknesses.
    expect(stackFlatFrom(flat, 0) / 3).toBeCloseTo(0.5 * (1.6 - Math.sqrt(0.56 / 3)), 9);
    expect(stackFlatFrom(aStack(), 0)).toBe(Number.POSITIVE_INFINITY);
  });
});
