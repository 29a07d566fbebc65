import * as fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { force, forceIn } from "#shared/units/force.ts";

const relative = (one: number, other: number) => Math.abs(one / other - 1);

describe("forceIn", () => {
  it("agrees with the seven figures of NIST SP 811 (2008), Appendix B.8: 1 lbf = 4.448 222 N", () => {
    expect(relative(forceIn("N", force(1, "lbf")), 4.448222)).toBeLessThan(5e-7);
  });

  it("turns 1 lbf into 4.448 221 615 260 5 N, from the exact definitions", () => {
    expect(relative(forceIn("N", force(1, "lbf")), 4.4482216152605)).toBeLessThan(1e-14);
  });

  it("agrees with an independent units library, and comes back", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (value) => {
        const pounds = forceIn("lbf", force(value, "N"));
        expect(relative(pounds, unit(value, "N").toNumber("lbf"))).toBeLessThan(1e-12);
        expect(relative(forceIn("N", force(pounds, "lbf")), value)).toBeLessThan(1e-15 * 4);
        expect(forceIn("N", force(value, "N"))).toBe(value);
      }),
    );
  });
});
