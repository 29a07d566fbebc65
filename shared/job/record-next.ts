import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import type { Service } from "#shared/job/record-schema.ts";
import { clocksOf, dueOf } from "#shared/triage/due.ts";
import { findingsOf } from "#shared/triage/findings.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";

/** What was done, as far as the clocks go. */
export type ClocksSet = {
  readonly date: string;
  readonly engineHours: number | null;
  readonly rebuilt: boolean;
  readonly slipSet: boolean;
};

/** What the unit's clocks start from after a service; what was not done goes on from what the owner told. */
function afterService(answers: Answers, { date, engineHours, rebuilt, slipSet }: ClocksSet): Answers {
  const now: RememberedService = { when: "known", date, engineHours, slipLeftAt: null };
  const never: RememberedService = { when: "never", date: null, engineHours: null, slipLeftAt: null };
  return {
    ...answers,
    engineHours,
    symptoms: [],
    washers: rebuilt ? "metal" : answers.washers,
    mods: { ...answers.mods, changedSinceSlip: slipSet || rebuilt ? false : answers.mods.changedSinceSlip },
    lastRebuild: rebuilt ? now : answers.lastRebuild,
    lastSlipSet: slipSet ? now : rebuilt ? never : answers.lastSlipSet,
  };
}

/** When the unit is due again by the shop's intervals, counted from this service. */
export function nextDue(answers: Answers, done: ClocksSet, settings: TriageSettings): Service["next"] {
  const findings = findingsOf(afterService(answers, done), done.date, settings);
  return { kind: dueOf(findings).kind, ...clocksOf(findings), slipInterval: findings.slipInterval };
}
