import * as fc from "fast-check";
import type { DiscSpring } from "#shared/slip/disc-shape.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const discsWith = (heightOverThickness: fc.Arbitrary<number>): fc.Arbitrary<DiscSpring> =>
  fc
    .record({ outer: number(15, 60), delta: number(1.5, 2.5), thinness: number(15, 40), ratio: heightOverThickness })
    .map(({ outer, delta, thinness, ratio }) => {
      const thicknessMm = outer / thinness;
      return { outerMm: outer, innerMm: outer / delta, thicknessMm, freeHeightMm: thicknessMm * (1 + ratio) };
    });

/** From the steepest to one past its top well before flat. */
export const discs = discsWith(number(0.2, 1.8));

/** Those that clamp more the further they are pressed, without a flat part worth the name. */
export const smallDiscs = discsWith(number(0.3, 0.9));
