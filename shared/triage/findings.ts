import { ceramicIsPlausible } from "#shared/craft/ceramic.ts";
import type { Answers, Symptom } from "#shared/craft/vocabulary.ts";
import type { HoursSpan } from "#shared/life/hours-span.ts";
import { type ServiceClock, serviceClock } from "#shared/life/service-clock.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";
import { plusMonths } from "#shared/units/calendar-date.ts";

/** What the rules look at: the answers with every unknown already read as its worst plausible value. */
export type Findings = {
  readonly symptoms: readonly Symptom[];
  /** Washers that may be ceramic count as ceramic. */
  readonly ceramic: boolean;
  readonly clock: ServiceClock;
  readonly sinceRebuild: HoursSpan;
  readonly sinceSlipSet: HoursSpan;
  /** Engine hours allowed between slip settings on this craft. */
  readonly slipInterval: number;
  readonly slipIntervalSetting: keyof TriageSettings;
  /** The date on which the months run out; null = not known, taken as passed. */
  readonly rebuildBy: string | null;
  readonly onDate: string;
  readonly changedSinceSlip: boolean;
  readonly notLooked: boolean;
  readonly settings: TriageSettings;
};

export function findingsOf(answers: Answers, onDate: string, settings: TriageSettings): Findings {
  const clock = serviceClock(answers, onDate, settings.hoursPerYear);
  const slipIntervalSetting = shortestInterval(answers, settings);
  return {
    symptoms: answers.symptoms,
    ceramic: mayBeCeramic(answers, settings),
    clock,
    sinceRebuild: clock.sinceRebuild,
    sinceSlipSet: clock.sinceSlipSet,
    slipInterval: settings[slipIntervalSetting],
    slipIntervalSetting,
    rebuildBy: clock.monthsFrom === null ? null : plusMonths(clock.monthsFrom, settings.rebuildMonths),
    onDate,
    changedSinceSlip: answers.mods.changedSinceSlip !== false,
    notLooked: answers.notLooked,
    settings,
  };
}

const mayBeCeramic = (answers: Answers, { ceramicUntilYear }: TriageSettings): boolean =>
  answers.washers === "ceramic" || (answers.washers === "unknown" && ceramicIsPlausible(answers, ceramicUntilYear));

/** The setting of the shortest interval that any part of the craft asks for. Not sure counts as the harder case. */
function shortestInterval({ riding, mods }: Answers, settings: TriageSettings): keyof TriageSettings {
  const { slipHoursEngineModified, slipHoursChargerModified } = settings;
  const engine = mods.engine === false ? Infinity : slipHoursEngineModified;
  const charger = mods.charger === false ? Infinity : slipHoursChargerModified;
  const byRiding = BY_RIDING[riding];
  const ridden = settings[byRiding];
  if (charger < engine && charger < ridden) return "slipHoursChargerModified";
  return engine < ridden ? "slipHoursEngineModified" : byRiding;
}

const BY_RIDING = {
  easy: "slipHoursEasy",
  mixed: "slipHoursMixed",
  hard: "slipHoursHard",
  unknown: "slipHoursHard",
} as const;
