import * as fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { lbfft, minus, newtonMetres, plus, torque, torqueIn } from "#shared/units/torque.ts";

const SEVEN_FIGURES = 5e-7;
const EXACT = 1e-12;
const relative = (one: number, other: number) => Math.abs(one / other - 1);

const torques = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
const units = fc.constantFrom("lbf.ft" as const, "N.m" as const);

describe("torqueIn", () => {
  it("agrees with the seven figures of NIST SP 811 (2008), Appendix B.8: 1 lbf·ft = 1.355 818 N·m", () => {
    expect(relative(torqueIn("N.m", lbfft(1)), 1.355818)).toBeLessThan(SEVEN_FIGURES);
  });

  // Worked out from 1 lb = 0.453 592 37 kg, g = 9.806 65 m/s², 1 in = 25.4 mm (NIST SP 811, Appendix B: all exact).
  it.each([
    [1, 1.3558179483314],
    [10, 13.558179483314],
    [25, 33.895448708285],
    [75, 101.686346124855],
    [100, 135.58179483314],
  ])("turns %d lbf·ft into %d N·m, from the exact definitions", (lbfFt, newtonMetre) => {
    expect(relative(torqueIn("N.m", lbfft(lbfFt)), newtonMetre)).toBeLessThan(EXACT);
  });

  it("turns 1 N·m into 0.737 562 149 277 265 4 lbf·ft, from the exact definitions", () => {
    expect(relative(torqueIn("lbf.ft", newtonMetres(1)), 0.7375621492772654)).toBeLessThan(EXACT);
  });

  it("agrees with an independent units library, both ways", () => {
    fc.assert(
      fc.property(torques, (value) => {
        expect(relative(torqueIn("N.m", lbfft(value)), unit(value, "lbf ft").toNumber("N m"))).toBeLessThan(EXACT);
        const back = unit(value, "N m").toNumber("lbf ft");
        expect(relative(torqueIn("lbf.ft", newtonMetres(value)), back)).toBeLessThan(EXACT);
      }),
    );
  });

  it("comes back to where it started", () => {
    fc.assert(
      fc.property(torques, units, units, (value, from, by) => {
        const back = torqueIn(from, torque(torqueIn(by, torque(value, from)), by));
        expect(relative(back, value)).toBeLessThan(1e-15 * 4);
      }),
    );
  });
});

describe("plus and minus", () => {
  it("work in the unit of the first, whatever the unit of the second", () => {
    expect(minus(lbfft(18), lbfft(1.5))).toEqual({ value: 16.5, unit: "lbf.ft" });
    expect(plus(lbfft(16.5), lbfft(1.5))).toEqual({ value: 18, unit: "lbf.ft" });
    const mixed = plus(newtonMetres(1), lbfft(10));
    expect(mixed.unit).toBe("N.m");
    expect(relative(mixed.value, 14.558179483314)).toBeLessThan(EXACT);
  });

  it("undo each other", () => {
    fc.assert(
      fc.property(torques, units, torques, units, (one, oneUnit, other, otherUnit) => {
        const back = minus(plus(torque(one, oneUnit), torque(other, otherUnit)), torque(other, otherUnit));
        expect(back.unit).toBe(oneUnit);
        expect(Math.abs(back.value - one)).toBeLessThan(1e-14 * (one + 2 * other));
      }),
    );
  });

  it("keep the unit in the type, so that N·m is never taken for lbf·ft", () => {
    // @ts-expect-error a torque in N·m is not one in lbf·ft
    const wrong: ReturnType<typeof lbfft> = newtonMetres(18);
    expect(wrong.unit).toBe("N.m");
  });
});
