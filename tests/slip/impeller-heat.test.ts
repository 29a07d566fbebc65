import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ALLOY_FACTS, IMPELLER_ALLOYS, STEEL_EXPANSION_PER_K } from "#shared/slip/impeller-alloys.ts";
import { type ImpellerFit, impellerHeat, riseToGrow } from "#shared/slip/impeller-heat.ts";
import { length } from "#shared/units/length.ts";
import { temperature } from "#shared/units/temperature.ts";

const mm = (value: number) => length(value, "mm");

const aFit = (changes: Partial<ImpellerFit> = {}): ImpellerFit => ({
  alloy: "2618-T61",
  shaft: mm(30),
  interference: mm(0.03),
  clearance: mm(0.03),
  room: temperature(20, "°C"),
  soakHours: 0.5,
  earlierSoaks: [],
  ...changes,
});

const relative = (one: number, other: number) => Math.abs(one / other - 1);
const PER_FAHRENHEIT = 1.8; // 1/°F is 1.8 times as much in 1/K
const INCH = 25.4;

describe("riseToGrow", () => {
  // Rises in °F, as the sources give them.
  it.each([
    // S. B. Junnarkar, Mechanics of Structures, example 1.14: hoop stress 6 of a modulus of 13 000 ton/in², a tyre for a 4 ft wheel.
    ["a steel tyre", (48 / 47.97786 - 1) * 47.97786, 47.97786, 6.2e-6, 74.44, 1e-3],
    // T. H. Wentzell, Machine Design, example 6.3
    ["a steel ring", 0.01204, 5, 6.5e-6, 370.46, 1e-3],
    // Public shrink-fit calculation: about 234 °F
    ["an aluminium hub", 0.001 + 0.002, 1, 12.8e-6, 234.4, 1e-3],
  ])("of %s", (_, growthIn, diameterIn, perFahrenheit, riseF, tolerance) => {
    const rise = riseToGrow(growthIn * INCH, diameterIn * INCH, perFahrenheit * PER_FAHRENHEIT);
    expect(relative(rise * PER_FAHRENHEIT, riseF)).toBeLessThan(tolerance);
  });

  // Worked out apart from this code, K.
  it.each([
    [0.06, 30, 22.3e-6, 89.686],
    [0.06, 30, 23.6e-6, 84.746],
    [0.05, 25, 23.6e-6 - 11.7e-6, 168.067],
  ])("of %d mm on %d mm", (growth, diameter, alpha, rise) => {
    expect(relative(riseToGrow(growth, diameter, alpha), rise)).toBeLessThan(1e-5);
  });
});

describe("impellerHeat", () => {
  it("gives the temperature to reach, and what it takes where the shaft warms too", () => {
    const heat = impellerHeat(aFit());
    expect(heat.reach).toBe("heat");
    expect(heat.heatTo?.value).toBeCloseTo(20 + 89.686, 2);
    expect(heat.riseWithShaftK).toBeCloseTo(0.06 / (30 * (22.3e-6 - STEEL_EXPANSION_PER_K)), 6);
    expect(heat.soaks).toMatchObject({ hours: 0.5, hoursOverCeiling: 0 });
  });

  it("reads the room in either scale", () => {
    expect(impellerHeat(aFit({ room: temperature(68, "°F") })).heatTo?.value).toBeCloseTo(109.686, 2);
  });

  it("reads lengths in either unit", () => {
    const inches = (value: number) => length(value / 25.4, "in");
    const heat = impellerHeat(aFit({ shaft: inches(30), interference: inches(0.03), clearance: inches(0.03) }));
    expect(heat.riseK).toBeCloseTo(impellerHeat(aFit()).riseK, 9);
  });

  it("gives no temperature over the ceiling, but what room the ceiling gives", () => {
    const heat = impellerHeat(aFit({ interference: mm(0.09) }));
    expect(heat).toMatchObject({ reach: "over-ceiling", heatTo: null, ceiling: { value: 150, unit: "°C" } });
    expect(heat.clearanceAtCeilingMm).toBeCloseTo(130 * 22.3e-6 * 30 - 0.09, 12);
    expect(heat.cautions.join(" ")).toContain("may not be made so hot");
    expect(heat.soaks.hours).toBe(0);
  });

  it("needs no heat where it is loose enough", () => {
    expect(impellerHeat(aFit({ interference: mm(-0.05) }))).toMatchObject({
      reach: "slides-cold",
      riseK: 0,
      heatTo: null,
    });
  });

  it("takes an alloy that is not known for the least of all", () => {
    for (const alloy of IMPELLER_ALLOYS) {
      expect(ALLOY_FACTS.unknown.ceilingC).toBeLessThanOrEqual(ALLOY_FACTS[alloy].ceilingC);
      expect(ALLOY_FACTS.unknown.expansionPerK).toBeLessThanOrEqual(ALLOY_FACTS[alloy].expansionPerK);
    }
    expect(impellerHeat(aFit({ alloy: "unknown", clearance: mm(0.01) })).cautions.join(" ")).toContain("not known");
  });

  it("keeps under what the alloys were aged at, or seen to weaken at", () => {
    // 6061-T6 and 2618-T61 are aged at 160 °C and more, 7075-T6 at 121 °C; 6061 lost its yield from 199 °C.
    expect(ALLOY_FACTS["6061-T6"].ceilingC).toBeLessThan(160);
    expect(ALLOY_FACTS["2618-T61"].ceilingC).toBeLessThan(182);
    expect(ALLOY_FACTS["7075-T6"].ceilingC).toBeLessThan(121);
  });

  it("remembers earlier soaks, and what they mean", () => {
    const worn = impellerHeat(aFit({ alloy: "6061-T6", earlierSoaks: [{ celsius: 210, hours: 5 }] }));
    expect(worn.soaks.hours).toBe(5.5);
    expect(worn.cautions.join(" ")).toContain("hardness tested");
    expect(worn.cautions.join(" ")).toContain("Replace the impeller");
  });

  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const fits = fc.record({
    alloy: fc.constantFrom(...IMPELLER_ALLOYS),
    shaft: number(5, 60).map(mm),
    interference: number(-0.05, 0.15).map(mm),
    clearance: number(0, 0.1).map(mm),
    room: number(0, 40).map((celsius) => temperature(celsius, "°C")),
    soakHours: number(0, 3),
    earlierSoaks: fc.constant([]),
  });

  it("makes it just large enough, never hotter than the ceiling", () => {
    fc.assert(
      fc.property(fits, (fit) => {
        const { reach, heatTo, ceiling, clearanceAtCeilingMm } = impellerHeat(fit);
        expect(reach === "heat").toBe(heatTo !== null);
        if (heatTo === null) return;
        expect(heatTo.value).toBeLessThanOrEqual(ceiling.value);
        const bore = fit.shaft.value - fit.interference.value;
        const grown = (heatTo.value - fit.room.value) * ALLOY_FACTS[fit.alloy].expansionPerK * fit.shaft.value;
        expect(bore + grown).toBeCloseTo(fit.shaft.value + fit.clearance.value, 9);
        expect(clearanceAtCeilingMm).toBeGreaterThanOrEqual(fit.clearance.value - 1e-12);
      }),
    );
  });

  it("asks for no less heat for a tighter fit, and for more where the shaft warms too", () => {
    fc.assert(
      fc.property(fits, number(0, 0.05), (fit, tighter) => {
        const one = impellerHeat(fit);
        expect(
          impellerHeat({ ...fit, interference: mm(fit.interference.value + tighter) }).riseK,
        ).toBeGreaterThanOrEqual(one.riseK);
        expect(one.riseWithShaftK).toBeGreaterThanOrEqual(one.riseK);
      }),
    );
  });
});
