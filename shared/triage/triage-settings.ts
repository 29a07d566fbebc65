import * as z from "zod";
import { BY_SHOP, DEFAULT, PRACTICE, type Source } from "#shared/basics/source.ts";

const hours = z.number().min(1).max(2000);

/** Milder use first: unknown riding is read as hard, which is the worst only in this order. */
const SLIP_HOURS_BY_RIDING = ["slipHoursEasy", "slipHoursMixed", "slipHoursHard"] as const;

/** The numbers that the triage rules read. The shop edits these, never the rules. */
export const TriageSettingsSchema = z
  .strictObject({
    slipHoursEasy: hours,
    slipHoursMixed: hours,
    slipHoursHard: hours,
    slipHoursEngineModified: hours,
    slipHoursChargerModified: hours,
    rebuildMonths: z.int().min(1).max(120),
    rebuildHours: hours,
    willNotHoldHours: z.number().min(0).max(500),
    ceramicUntilYear: z.int().min(1985).max(2100),
    hoursPerYear: z.number().min(1).max(2000),
  })
  .superRefine((settings, context) => {
    for (const [index, field] of SLIP_HOURS_BY_RIDING.entries()) {
      const most = settings[SLIP_HOURS_BY_RIDING[index - 1] ?? field];
      if (settings[field] <= most) continue;
      context.addIssue({ code: "custom", path: [field], message: `at most ${most}, as for gentler riding` });
    }
  });
export type TriageSettings = z.infer<typeof TriageSettingsSchema>;

export const TRIAGE_DEFAULTS: TriageSettings = {
  slipHoursEasy: 100,
  slipHoursMixed: 75,
  slipHoursHard: 50,
  slipHoursEngineModified: 50,
  slipHoursChargerModified: 30,
  rebuildMonths: 24,
  rebuildHours: 200,
  willNotHoldHours: 25,
  ceramicUntilYear: 2010,
  hoursPerYear: 150,
};

/** A number's source: that of its default, until the shop changes it. */
export const settingSource = (settings: TriageSettings, key: keyof TriageSettings): Source =>
  settings[key] === TRIAGE_DEFAULTS[key] ? TRIAGE_SETTING_NOTES[key].source : BY_SHOP;

/** What each number means and where its default comes from, for the shop's settings page. */
export const TRIAGE_SETTING_NOTES: Readonly<
  Record<keyof TriageSettings, { readonly text: string; readonly source: Source }>
> = {
  slipHoursEasy: { text: "Engine hours between slip settings, standard craft ridden gently", source: PRACTICE },
  slipHoursMixed: { text: "Engine hours between slip settings, mixed riding", source: DEFAULT },
  slipHoursHard: { text: "Engine hours between slip settings, ridden hard", source: DEFAULT },
  slipHoursEngineModified: { text: "Engine hours between slip settings, engine modified", source: DEFAULT },
  slipHoursChargerModified: { text: "Engine hours between slip settings, charger modified", source: DEFAULT },
  rebuildMonths: { text: "Months between rebuilds, whatever the hours", source: PRACTICE },
  rebuildHours: { text: "Engine hours between rebuilds", source: DEFAULT },
  willNotHoldHours: {
    text: "Boost that fades within this many hours of a slip setting: the slip does not hold",
    source: DEFAULT,
  },
  ceramicUntilYear: { text: "Last year built in which ceramic washers are plausible", source: DEFAULT },
  hoursPerYear: {
    text: "Most hours a year that an owner is taken to ride where the hours are not known",
    source: DEFAULT,
  },
};
