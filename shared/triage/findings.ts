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
  /** The date on which the months run out; null = not known, taken as passed. */
  readonly rebuildBy: string | null;
  readonly onDate: string;
  readonly changedSinceSlip: boolean;
  readonly notLooked: boolean;
  readonly settings: TriageSettings;
};

export function findingsOf(answers: Answers, onDate: string, settings: TriageSettings): Findings {
  const clock = serviceClock(answers, onDate, settings.hoursPerYear);
  return {
    symptoms: answers.symptoms,
    ceramic: mayBeCeramic(answers, settings),
    clock,
    sinceRebuild: clock.sinceRebuild,
    sinceSlipSet: clock.sinceSlipSet,
    slipInterval: slipInterval(answers, settings),
    rebuildBy: clock.monthsFrom === null ? null : plusMonths(clock.monthsFrom, settings.rebuildMonths),
    onDate,
    changedSinceSlip: answers.mods.changedSinceSlip !== false,
    notLooked: answers.notLooked,
    settings,
  };
}

const mayBeCeramic = (answers: Answers, { ceramicUntilYear }: TriageSettings): boolean =>
  answers.washers === "ceramic" || (answers.washers === "unknown" && ceramicIsPlausible(answers, ceramicUntilYear));

/** The shortest interval that any part of the craft asks for. Not sure counts as the harder case. */
function slipInterval({ riding, mods }: Answers, settings: TriageSettings): number {
  return Math.min(
    settings[BY_RIDING[riding]],
    mods.engine === false ? Infinity : settings.slipHoursEngineModified,
    mods.charger === false ? Infinity : settings.slipHoursChargerModified,
  );
}

const BY_RIDING = {
  easy: "slipHoursEasy",
  mixed: "slipHoursMixed",
  hard: "slipHoursHard",
  unknown: "slipHoursHard",
} as const;
