import { describe, expect, it } from "vitest";
import { springsOf } from "#shared/slip/clutch-parts.ts";
import { CLUTCH_DEFAULTS, CLUTCH_SETTING_NOTES, ClutchSettingsSchema } from "#shared/slip/clutch-settings.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import { frictionShare, stackForceBounds, stackTravel } from "#shared/slip/spring-stack.ts";

const refusedFields = (family: "setNut" | "shimStack", changes: Record<string, unknown>) => {
  const parsed = ClutchSettingsSchema.safeParse({
    ...CLUTCH_DEFAULTS,
    [family]: { ...CLUTCH_DEFAULTS[family], ...changes },
  });
  return parsed.success ? [] : parsed.error.issues.map(({ path }) => path.join("."));
};

describe("clutch settings", () => {
  it("accept their own defaults", () => {
    expect(ClutchSettingsSchema.parse(CLUTCH_DEFAULTS)).toEqual(CLUTCH_DEFAULTS);
  });

  it("say of each number what it means, that it is ours, and to measure", () => {
    for (const family of ["setNut", "shimStack"] as const) {
      expect(Object.keys(CLUTCH_SETTING_NOTES[family]).sort()).toEqual(Object.keys(CLUTCH_DEFAULTS[family]).sort());
      for (const { text, source } of Object.values(CLUTCH_SETTING_NOTES[family])) {
        expect(source).toEqual({ kind: "default" });
        expect(text).toMatch(/; measure your own unit$/);
      }
    }
  });

  it("describe a clutch that can be set to every slip of the slip settings without going past its limit", () => {
    // With the friction coefficient of 0.1 that oiled metal may come to, on a mean radius of 19.5 mm and two faces.
    const springs = springsOf(CLUTCH_DEFAULTS.setNut);
    const { loading } = stackForceBounds(springs, CLUTCH_DEFAULTS.setNut.mostTravelShare * stackTravel(springs));
    const mostLbfFt = (2 * 0.1 * loading * 0.0195) / 1.3558179483314;
    expect(mostLbfFt).toBeGreaterThan(SLIP_DEFAULTS.ceilingSetNut);
    expect(frictionShare(springs)).toBeLessThan(0.5);
  });

  it.each<["setNut" | "shimStack", Record<string, number>, string, string]>([
    ["setNut", { springInnerMm: 28 }, "setNut.springInnerMm", "a ring needs a width"],
    ["shimStack", { washerInnerMm: 48 }, "shimStack.washerInnerMm", "a ring needs a width"],
    ["setNut", { springFreeHeightMm: 1.5 }, "setNut.springFreeHeightMm", "a flat disc is no spring"],
    ["setNut", { mostTravelShare: 1 }, "setNut.mostTravelShare", "home locks the gear"],
    ["setNut", { threadPitchMm: 0 }, "setNut.threadPitchMm", "a thread has a pitch"],
    ["setNut", { springsNested: 1.5 }, "setNut.springsNested", "springs are whole"],
    ["shimStack", { shimStepMm: 0 }, "shimStack.shimStepMm", "shims differ"],
    ["setNut", { trySpreadLbfFt: 0 }, "setNut.trySpreadLbfFt", "no reading is exact"],
    ["setNut", { contactSpreadDegrees: 0 }, "setNut.contactSpreadDegrees", "no hand is exact"],
    ["setNut", { riseSd: 0 }, "setNut.riseSd", "what is certain cannot be learnt"],
    ["shimStack", { threadPitchMm: 1 }, "shimStack", "its nut is always home"],
  ])("refuse in %s %j, naming %s, because %s", (family, changes, field) => {
    expect(refusedFields(family, changes)).toContain(field);
  });
});
