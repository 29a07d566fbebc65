import * as fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { power, powerIn } from "#shared/units/power.ts";

const relative = (one: number, other: number) => Math.abs(one / other - 1);

describe("powerIn", () => {
  it("agrees with the seven figures of NIST SP 811 (2008), Appendix B.8: 1 hp (550 ft·lbf/s) = 745.6999 W", () => {
    expect(relative(powerIn("W", power(1, "hp")), 745.6999)).toBeLessThan(5e-7);
  });

  it("turns 1 hp into 745.699 871 582 270 2 W, from the exact definitions", () => {
    expect(relative(powerIn("W", power(1, "hp")), 745.6998715822702)).toBeLessThan(1e-14);
  });

  it("agrees with an independent units library to its own ten digits, and comes back", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (value) => {
        const horses = powerIn("hp", power(value, "kW"));
        expect(relative(horses, unit(value, "kW").toNumber("hp"))).toBeLessThan(1e-10);
        expect(relative(powerIn("kW", power(horses, "hp")), value)).toBeLessThan(1e-15 * 4);
        expect(powerIn("kW", power(value, "kW"))).toBe(value);
      }),
    );
  });
});
