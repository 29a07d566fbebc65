import * as fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { slipPlan } from "#shared/slip/slip-plan.ts";
import type { SlipCraft } from "#shared/slip/slip-rule.ts";
import { SLIP_RULES } from "#shared/slip/slip-rules.ts";
import { SLIP_DEFAULTS, type SlipSettings } from "#shared/slip/slip-settings.ts";
import { boosts, crafts, settings, WHOLE_GRID } from "#tests/slip/slip-craft.ts";

const targetOf = (craft: SlipCraft, chosen: SlipSettings) => slipPlan(craft, chosen).target?.value;
const withMods = (craft: SlipCraft, mods: Partial<SlipCraft["mods"]>) => ({
  ...craft,
  mods: { ...craft.mods, ...mods },
});

const CEILINGS = { "set-nut": "ceilingSetNut", "shim-stack": "ceilingShimStack", unknown: "ceilingUnknown" } as const;

describe("a slip plan", () => {
  it("never aims over the unit's ceiling", () => {
    fc.assert(
      fc.property(crafts, settings, (craft, chosen) => {
        expect(targetOf(craft, chosen) ?? 0).toBeLessThanOrEqual(chosen[CEILINGS[craft.unitFamily]]);
      }),
    );
  });

  it("never aims lower for more boost", () => {
    fc.assert(
      fc.property(crafts, settings, boosts, boosts, (craft, chosen, one, other) => {
        const [less, more] = [one, other].sort((a, b) => a - b) as [number, number];
        const withBoost = (boostPsi: number) =>
          targetOf(withMods(craft, { charger: true, boostPsi }), chosen) ?? Infinity;
        expect(withBoost(less)).toBeLessThanOrEqual(withBoost(more));
      }),
    );
  });

  it("never aims higher because a modification is not known", () => {
    fc.assert(
      fc.property(crafts, settings, (craft, chosen) => {
        const mods = { engine: craft.mods.engine ?? false, charger: craft.mods.charger ?? false };
        expect(targetOf(craft, chosen)).toBe(targetOf(withMods(craft, mods), chosen));
      }),
    );
  });

  it("never gives a modified charger less than a standard one", () => {
    fc.assert(
      fc.property(crafts, settings, boosts, (craft, chosen, boostPsi) => {
        const standard = targetOf(withMods(craft, { charger: false }), chosen) ?? Infinity;
        expect(targetOf(withMods(craft, { charger: true, boostPsi }), chosen)).toBeGreaterThanOrEqual(standard);
      }),
    );
  });

  it("aims inside its own band", () => {
    fc.assert(
      fc.property(crafts, settings, (craft, chosen) => {
        const { target, band } = slipPlan(craft, chosen);
        expect(target === null).toBe(band === null);
        if (target === null || band === null) return;
        expect(target.value).toBeGreaterThanOrEqual(band.low);
        expect(target.value).toBeLessThanOrEqual(band.high);
      }),
    );
  });

  it("puts the shop's usual band round a target that the boost or the ceiling decides, to the hundredth", () => {
    fc.assert(
      fc.property(crafts, settings, boosts, (craft, chosen, boostPsi) => {
        const { target, band, basis } = slipPlan(withMods(craft, { charger: true, boostPsi }), chosen);
        fc.pre(basis[0] !== "boost-below-standard");
        expect(band?.low).toBeCloseTo((target?.value ?? 0) - chosen.bandUnder, 9);
        expect(band?.high).toBeCloseTo((target?.value ?? 0) + chosen.bandOver, 9);
      }),
    );
  });

  it("says the same in N·m as an independent units library, to the last digit shown", () => {
    fc.assert(
      fc.property(crafts, settings, (craft, chosen) => {
        const { target, targetSI } = slipPlan(craft, chosen);
        expect(target === null).toBe(targetSI === null);
        if (target === null || targetSI === null) return;
        const oracle = unit(target.value, "lbf ft").toNumber("N m");
        expect(Math.abs(targetSI.value - oracle)).toBeLessThanOrEqual(0.0005 + 1e-9);
      }),
    );
  });

  it("is set below the target before the lock nut, by the rise, on set-nut units only", () => {
    fc.assert(
      fc.property(crafts, settings, (craft, chosen) => {
        const { target, setBeforeLock } = slipPlan(craft, chosen);
        expect(setBeforeLock !== null).toBe(craft.unitFamily === "set-nut" && target !== null);
        if (setBeforeLock === null || target === null) return;
        expect(setBeforeLock.value).toBeCloseTo(target.value - chosen.lockNutRise, 9);
      }),
    );
  });

  it("gives a target to every craft but a modified charger of unknown boost", () => {
    const without = WHOLE_GRID.filter((craft) => targetOf(craft, SLIP_DEFAULTS) === undefined);
    const expected = WHOLE_GRID.filter(({ mods }) => mods.charger === true && mods.boostPsi === null);
    expect(without).toEqual(expected);
    expect(expected.length).toBeGreaterThan(0);
  });

  it("leaves no rule that never fires, and names no rule that is not listed", () => {
    const fired = new Set(WHOLE_GRID.flatMap((craft) => slipPlan(craft, SLIP_DEFAULTS).basis));
    expect([...fired].sort()).toEqual(SLIP_RULES.map(({ id }) => id).sort());
  });

  it("gives every rule its own id, a sentence that ends, and a source", () => {
    expect(new Set(SLIP_RULES.map(({ id }) => id)).size).toBe(SLIP_RULES.length);
    for (const { id, text, source } of SLIP_RULES) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(text).toMatch(/^[A-Z].+[.]$/);
      expect(["common practice, no published source", "default of this project"]).toContain(source);
    }
  });

  it("cautions in short sentences, never twice the same", () => {
    for (const craft of WHOLE_GRID) {
      const { cautions } = slipPlan(craft, SLIP_DEFAULTS);
      expect(new Set(cautions).size).toBe(cautions.length);
      for (const sentence of cautions.flatMap((caution) => caution.split(/(?<=[.:])\s+/))) {
        expect(sentence.split(" ").length, sentence).toBeLessThanOrEqual(14);
      }
    }
  });
});
