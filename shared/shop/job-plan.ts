import { benchJob } from "#shared/calendar/bench-job.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { type Part, partsFor } from "#shared/shop/parts.ts";
import { type Quote, quote } from "#shared/shop/prices.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { type SlipPlan, slipPlan } from "#shared/slip/slip-plan.ts";
import { type Clocks, clocksOf } from "#shared/triage/due.ts";
import { findingsOf } from "#shared/triage/findings.ts";
import { type Judgement, judge } from "#shared/triage/judge.ts";

/** Everything that follows from the answers: what the owner is told and what the bench lays out. */
export type JobPlan = {
  readonly judgement: Judgement;
  readonly clocks: Clocks;
  readonly slip: SlipPlan;
  readonly parts: readonly Part[];
  readonly benchMinutes: number;
  readonly quote: Quote;
};

export function planJob(answers: Answers, onDate: string, settings: ShopSettings): JobPlan {
  const judgement = judge(answers, onDate, settings.triage);
  const findings = findingsOf(answers, onDate, settings.triage);
  const work = benchJob(judgement.verdict);
  return {
    judgement,
    clocks: clocksOf(findings),
    slip: slipPlan(answers, settings.slip),
    parts: partsFor({ work, unitFamily: answers.unitFamily, ceramic: findings.ceramic }),
    benchMinutes: settings.calendar.minutes[work],
    quote: quote(judgement.verdict, answers.unitFamily, settings.prices),
  };
}
