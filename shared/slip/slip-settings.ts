import * as z from "zod";
import { DEFAULT, PRACTICE, published, type Source } from "#shared/basics/source.ts";

/** To a hundredth of a lbf·ft: finer than any tool on the bench, and what every plan is rounded to. */
const slip = z.number().min(5).max(40).multipleOf(0.01);
const bandSide = z.number().min(0).max(3).multipleOf(0.01);

/** The numbers that the slip plan and the slip reading use, torques in lbf·ft. The shop edits these, never the rules. */
export const SlipSettingsSchema = z
  .strictObject({
    gentleLow: slip,
    gentleHigh: slip,
    hardLow: slip,
    hardHigh: slip,
    mixedTarget: slip,
    bandUnder: bandSide,
    bandOver: bandSide,
    ceilingSetNut: slip,
    ceilingShimStack: slip,
    ceilingUnknown: slip,
    lockNutRise: z.number().min(0).max(4).multipleOf(0.01),
    riskAllowed: z.number().min(0.001).max(0.25),
    rejectFrom: z.number().min(0.75).max(0.999),
    coverage: z.number().min(0.5).max(0.999),
  })
  .superRefine((settings, context) => {
    const refuse = (field: keyof typeof settings, message: string) =>
      context.addIssue({ code: "custom", path: [field], message });
    if (settings.gentleLow >= settings.gentleHigh) refuse("gentleHigh", "more than gentleLow");
    if (settings.hardLow >= settings.hardHigh) refuse("hardHigh", "more than hardLow");
    const highest = Math.max(settings.gentleHigh, settings.hardHigh, settings.mixedTarget);
    for (const ceiling of ["ceilingSetNut", "ceilingShimStack", "ceilingUnknown"] as const) {
      if (settings[ceiling] < highest) refuse(ceiling, `at least ${highest}, the highest slip with a standard charger`);
    }
  });
export type SlipSettings = Readonly<z.infer<typeof SlipSettingsSchema>>;

export const SLIP_DEFAULTS: SlipSettings = {
  gentleLow: 12,
  gentleHigh: 13,
  hardLow: 13,
  hardHigh: 14,
  mixedTarget: 13,
  bandUnder: 0.5,
  bandOver: 0.1,
  ceilingSetNut: 18,
  ceilingShimStack: 18,
  ceilingUnknown: 18,
  lockNutRise: 1.5,
  riskAllowed: 0.05,
  rejectFrom: 0.95,
  coverage: 0.95,
};

const DECISION_RULE = published("ISO 14253-1:2017, default probability of conformity 95 %");
const EXPANDED = published("JCGM 100:2008, 6.3.3, level of confidence about 95 %");

/** What each number means and where its default comes from, for the shop's settings page. */
export const SLIP_SETTING_NOTES: Readonly<
  Record<keyof SlipSettings, { readonly text: string; readonly source: Source }>
> = {
  gentleLow: { text: "Slip of a standard craft ridden gently, from, lbf·ft", source: PRACTICE },
  gentleHigh: { text: "Slip of a standard craft ridden gently, to, lbf·ft", source: PRACTICE },
  hardLow: { text: "Slip with a standard charger, modified craft or ridden hard, from, lbf·ft", source: PRACTICE },
  hardHigh: { text: "Slip with a standard charger, modified craft or ridden hard, to, lbf·ft", source: PRACTICE },
  mixedTarget: { text: "Slip with a standard charger, mixed or unknown riding, lbf·ft", source: DEFAULT },
  bandUnder: { text: "How far the final slip may be under the target, lbf·ft", source: DEFAULT },
  bandOver: { text: "How far the final slip may be over the target, lbf·ft", source: DEFAULT },
  ceilingSetNut: { text: "Most slip ever planned for a set-nut unit, lbf·ft", source: PRACTICE },
  ceilingShimStack: { text: "Most slip ever planned for a shim-stack unit, lbf·ft", source: DEFAULT },
  ceilingUnknown: { text: "Most slip ever planned for a unit of unknown build, lbf·ft", source: DEFAULT },
  lockNutRise: { text: "Slip added by tightening the lock nut of a set-nut unit, lbf·ft", source: PRACTICE },
  riskAllowed: {
    text: "Chance of being over, or under, the band that is still accepted, 0 to 1",
    source: DECISION_RULE,
  },
  rejectFrom: {
    text: "Chance of being over, or under, the band from which it is rejected, 0 to 1",
    source: DECISION_RULE,
  },
  coverage: { text: "Level of confidence of the expanded uncertainty that is shown, 0 to 1", source: EXPANDED },
};
