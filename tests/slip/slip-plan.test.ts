import { describe, expect, it } from "vitest";
import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import { slipPlan } from "#shared/slip/slip-plan.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import { aCraft } from "#tests/slip/slip-craft.ts";

const planFor = (...changes: Parameters<typeof aCraft>) => slipPlan(aCraft(...changes), SLIP_DEFAULTS);

// Sources: common practice of the trade, no published source, unless the row says "project default".
const TARGETS: readonly [Parameters<typeof aCraft>[0], number, number, number, string][] = [
  [{ riding: "easy" }, 12.5, 12, 13, "all standard, ridden gently: 12 to 13"],
  [{ riding: "hard" }, 13.5, 13, 14, "ridden hard: 13 to 14"],
  [{ riding: "easy", engine: true }, 13.5, 13, 14, "a modified craft: 13 to 14, however it is ridden"],
  [{ riding: "mixed", engine: true }, 13.5, 13, 14, "a modified craft: 13 to 14, however it is ridden"],
  [{ riding: "mixed" }, 13, 12.5, 13.1, "mixed riding: between the ranges (project default)"],
  [{ riding: "unknown" }, 13, 12.5, 13.1, "unknown riding: between the ranges (project default)"],
  [{ charger: true, boostPsi: 16 }, 16, 15.5, 16.1, "a modified charger: 1 lbf·ft per psi"],
  [{ charger: true, boostPsi: 17.8 }, 17.8, 17.3, 17.9, "just under the ceiling it is still per psi"],
  [{ charger: true, boostPsi: 18 }, 18, 17.5, 18.1, "18 psi or more is not one for one"],
  [{ charger: true, boostPsi: 20 }, 18, 17.5, 18.1, "18 is used on a unit making over 20 psi"],
  [
    { charger: true, boostPsi: 10 },
    12.5,
    12,
    13,
    "low boost never gets less than the standard range (project default)",
  ],
  [{ charger: true, boostPsi: 12.5 }, 12.5, 12, 13, "boost just at the middle leaves the range (project default)"],
  [{ charger: true, boostPsi: 13, riding: "hard" }, 13.5, 13, 14, "the larger of the two, hard (project default)"],
  [{ charger: true, boostPsi: 13 }, 13, 12.5, 13.1, "the larger of the two, gentle: the boost"],
  [{ charger: true, boostPsi: 12, riding: "mixed" }, 13, 12.5, 13.1, "the larger of the two, mixed (project default)"],
  [{ charger: true, boostPsi: 13.8, engine: true }, 13.8, 13.3, 13.9, "the larger of the two, engine modified"],
  [{ charger: null, boostPsi: 22 }, 12.5, 12, 13, "an unknown charger never raises the slip, whatever the gauge says"],
  [{ charger: false, boostPsi: 22 }, 12.5, 12, 13, "a standard charger is planned as standard"],
  [{ engine: null }, 12.5, 12, 13, "an unknown engine never raises the slip"],
  [
    { unitFamily: "shim-stack", charger: true, boostPsi: 25 },
    18,
    17.5,
    18.1,
    "its ceiling is 18 too (project default)",
  ],
  [{ unitFamily: "unknown", charger: true, boostPsi: 25 }, 18, 17.5, 18.1, "its ceiling is 18 too (project default)"],
];

describe("slipPlan", () => {
  it.each(TARGETS)("plans %j as %d lbf·ft, band %d to %d, because %s", (changes, target, low, high) => {
    const plan = planFor(changes);
    expect(plan.target).toEqual({ value: target, unit: "lbf.ft" });
    expect(plan.band).toEqual({ low, high });
  });

  it.each<[UnitFamily, number, number | null, string]>([
    ["set-nut", 20, 16.5, "the lock nut adds about 1.5: 16.5 for 18"],
    ["set-nut", 16, 14.5, "the lock nut adds about 1.5 at any target"],
    ["shim-stack", 20, null, "the set nut is tightened home and shims set the slip"],
    ["unknown", 20, null, "it is not known whether the set nut may be tightened home"],
  ])("sets a %s unit with %d psi to %j before the lock nut, because %s", (unitFamily, boostPsi, before) => {
    const { setBeforeLock } = planFor({ unitFamily, charger: true, boostPsi });
    expect(setBeforeLock).toEqual(before === null ? null : { value: before, unit: "lbf.ft" });
  });

  it.each([17.8, 17.9])("lets a unit that aims for 18 end at %d: a little under is fine", (final) => {
    const band = planFor({ charger: true, boostPsi: 20 }).band ?? { low: 0, high: 0 };
    expect(final).toBeGreaterThan(band.low);
    expect(final).toBeLessThan(band.high);
  });

  it("gives no number for a modified charger whose boost is not known, and says what to do", () => {
    const plan = planFor({ charger: true, boostPsi: null });
    expect(plan).toMatchObject({ target: null, targetSI: null, band: null, setBeforeLock: null });
    expect(plan.basis).toContain("boost-not-known");
    expect(plan.cautions.join(" ")).toContain("Measure it or ask");
  });

  it("shows the target in N·m too, converted before it is rounded", () => {
    // 18 and 12.5 lbf·ft by the exact factor 1.3558179483314 N·m, NIST SP 811 bases
    expect(planFor({ charger: true, boostPsi: 20 }).targetSI).toEqual({ value: 24.405, unit: "N.m" });
    expect(planFor().targetSI).toEqual({ value: 16.948, unit: "N.m" });
  });

  it("shows no float's tail where the boost was converted from another unit", () => {
    const plan = planFor({ charger: true, boostPsi: 15.954151150292 });
    expect(plan.target?.value).toBe(15.95);
    expect(plan.band).toEqual({ low: 15.45, high: 16.05 });
    expect(plan.setBeforeLock?.value).toBe(14.45);
  });

  it.each([
    [{ unitFamily: "set-nut" }, "Never tighten the set nut home"],
    [{ unitFamily: "set-nut", charger: true, boostPsi: null }, "Never tighten the set nut home"],
    [{ unitFamily: "unknown" }, "never tighten it home"],
    [{ charger: null }, "whether the charger is modified. Confirm it before the final set"],
    [{ engine: null }, "whether the engine is modified. Confirm it before the final set"],
    [{}, "Over is not"],
  ] as const)("cautions for %j: %s", (changes, caution) => {
    expect(planFor(changes).cautions.join(" ")).toContain(caution);
  });

  it("says nothing of set nuts to be kept from home on a unit where they belong home", () => {
    const plan = planFor({ unitFamily: "shim-stack" });
    expect(plan.cautions.join(" ")).not.toContain("home");
    expect(plan.basis).toContain("shims-set-slip");
  });

  it("names the rule that decided first", () => {
    expect(planFor({ charger: true, boostPsi: 20 }).basis[0]).toBe("boost-over-ceiling");
    expect(planFor({ charger: true, boostPsi: 10 }).basis.slice(0, 2)).toEqual(["boost-below-standard", "gentle"]);
  });
});
