import * as fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { PRESSURE_UNITS, pressure, pressureIn } from "#shared/units/pressure.ts";

const relative = (one: number, other: number) => Math.abs(one / other - 1);

const pressures = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
const units = fc.constantFrom(...PRESSURE_UNITS);

describe("pressureIn", () => {
  it("agrees with the seven figures of NIST SP 811 (2008), Appendix B.8: 1 psi = 6.894 757 kPa, 1 bar = 100 kPa", () => {
    expect(relative(pressureIn("kPa", pressure(1, "psi")), 6.894757)).toBeLessThan(5e-7);
    expect(pressureIn("kPa", pressure(1, "bar"))).toBe(100);
  });

  // Worked out from 1 lb = 0.453 592 37 kg, g = 9.806 65 m/s², 1 in = 25.4 mm (NIST SP 811, Appendix B: all exact).
  it.each([
    [1, 6.894757293168361],
    [5, 34.473786465842],
    [14.7, 101.352932209575],
    [15, 103.421359397525],
  ])("turns %d psi into %d kPa, from the exact definitions", (psi, kPa) => {
    expect(relative(pressureIn("kPa", pressure(psi, "psi")), kPa)).toBeLessThan(1e-12);
  });

  it("agrees with an independent units library, whose own psi is good to ten digits", () => {
    fc.assert(
      fc.property(pressures, units, units, (value, from, to) => {
        const oracle = unit(value, from).toNumber(to);
        expect(relative(pressureIn(to, pressure(value, from)), oracle)).toBeLessThan(1e-10);
      }),
    );
  });

  it("comes back to where it started", () => {
    fc.assert(
      fc.property(pressures, units, units, (value, from, by) => {
        const back = pressureIn(from, pressure(pressureIn(by, pressure(value, from)), by));
        expect(relative(back, value)).toBeLessThan(1e-15 * 4);
      }),
    );
  });
});
