import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  SLIP_DEFAULTS,
  SLIP_SETTING_NOTES,
  type SlipSettings,
  SlipSettingsSchema,
} from "#shared/slip/slip-settings.ts";
import { settings } from "#tests/slip/slip-craft.ts";

const refusedFields = (changes: Record<string, unknown>) => {
  const parsed = SlipSettingsSchema.safeParse({ ...SLIP_DEFAULTS, ...changes });
  return parsed.success ? [] : parsed.error.issues.map(({ path }) => path.join("."));
};

describe("slip settings", () => {
  it("accept their own defaults, and any that a shop may have", () => {
    expect(SlipSettingsSchema.parse(SLIP_DEFAULTS)).toEqual(SLIP_DEFAULTS);
    fc.assert(
      fc.property(settings, (chosen) => {
        expect(SlipSettingsSchema.parse(chosen)).toEqual(chosen);
      }),
    );
  });

  it("say of each number what it means and where its default comes from", () => {
    expect(Object.keys(SLIP_SETTING_NOTES).sort()).toEqual(Object.keys(SLIP_DEFAULTS).sort());
  });

  it.each<[Partial<SlipSettings>, string, string]>([
    [{ gentleHigh: 12 }, "gentleHigh", "a range needs a width"],
    [{ hardLow: 14.5 }, "hardHigh", "a range must not run backwards"],
    [{ ceilingSetNut: 13.9 }, "ceilingSetNut", "a standard craft may not aim over the ceiling"],
    [{ ceilingUnknown: 13 }, "ceilingUnknown", "a standard craft may not aim over the ceiling"],
    [{ mixedTarget: 18.01 }, "ceilingShimStack", "a standard craft may not aim over the ceiling"],
    [{ mixedTarget: 13.005 }, "mixedTarget", "a plan is rounded to a hundredth"],
    [{ lockNutRise: -1 }, "lockNutRise", "the lock nut never lowers the slip"],
    [{ riskAllowed: 0.5 }, "riskAllowed", "a coin's toss proves nothing"],
    [{ rejectFrom: 0.5 }, "rejectFrom", "a coin's toss proves nothing"],
    [{ coverage: 1 }, "coverage", "an interval that is never wrong has no end"],
  ])("refuse %j, naming %s, because %s", (changes, field) => {
    expect(refusedFields(changes)).toContain(field);
  });

  it("refuse a field they do not know", () => {
    expect(SlipSettingsSchema.safeParse({ ...SLIP_DEFAULTS, torque: 18 }).success).toBe(false);
  });
});
