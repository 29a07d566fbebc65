import { sourceText } from "#shared/basics/source.ts";
import { benchJob } from "#shared/calendar/bench-job.ts";
import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import { type BenchEvidence, benchEvidence, type FoundJob } from "#shared/job/bench-evidence.ts";
import { FINDING_RULES, type FindingRule, NOT_OPENED, NOTHING_FOUND } from "#shared/job/finding-rules.ts";
import { NEXT_STEPS } from "#shared/job/next-steps.ts";
import type { BenchSheet } from "#shared/job/sheet-entry.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { ENGINE_DEBRIS, type EngineDebris } from "#shared/triage/engine-debris.ts";
import type { Reason } from "#shared/triage/judge.ts";
import { severity, VERDICTS, type Verdict } from "#shared/triage/verdict.ts";

/** What the open unit says: of the engine, of the work it needs, and of what its owner should do. */
export type BenchFindings = {
  /** False while nobody has looked inside: what the owner's answers said stands alone. */
  readonly opened: boolean;
  /** Never milder than the verdict that the job was booked with. */
  readonly verdict: Verdict;
  /** The work that it really needs. */
  readonly work: BenchJob;
  readonly engineDebris: EngineDebris;
  /** Every rule that held, worst first; never empty. */
  readonly reasons: readonly Reason[];
  /** What the owner does next, in order; never empty. */
  readonly nextSteps: readonly Reason[];
};

/**
 * Judges what the bench has written so far. Once the unit is open, whatever is not known counts as the worst that it may
 * be: the engine stays off, and the part is looked at first. Debris that only may be there is called possible.
 */
export function benchFindings(job: FoundJob, sheet: BenchSheet, settings: ShopSettings): BenchFindings {
  return judgeEvidence(benchEvidence(job, sheet, settings));
}

/** @example judgeEvidence({ ...allGood, needles: { counted: 11, belong: 12 } }).engineDebris // "likely" */
export function judgeEvidence(it: BenchEvidence): BenchFindings {
  const held = FINDING_RULES.filter((rule) => rule.when(it));
  const found = held.length > 0 ? held : [NOTHING_FOUND, NOT_OPENED].filter((rule) => rule.when(it));
  const engineDebris = worst(ENGINE_DEBRIS, [
    it.told.engineDebris,
    ...found.map(({ outcome }) => outcome.engineDebris),
  ]);
  const verdict = worst(VERDICTS, [it.told.verdict, ...found.map(({ outcome }) => outcome.verdict)]);
  const judged = { opened: it.opened, engineDebris, verdict };
  return {
    ...judged,
    work: benchJob(verdict),
    reasons: [...asTold(it, found), ...found.map((rule) => said(rule, it))],
    nextSteps: NEXT_STEPS.filter((step) => step.when(judged)).map(({ id, says, source }) => ({
      rule: id,
      text: says,
      source: sourceText(source),
    })),
  };
}

/** Mildest first, as both lists are. */
const worst = <Grade>(grades: readonly Grade[], among: readonly Grade[]): Grade =>
  among.reduce((one, other) => (grades.indexOf(other) > grades.indexOf(one) ? other : one));

/** What the owner noticed still counts where the unit itself does not look as bad. */
function asTold({ told }: BenchEvidence, found: readonly FindingRule[]): readonly Reason[] {
  const isMilder = found.every(
    ({ outcome }) =>
      ENGINE_DEBRIS.indexOf(outcome.engineDebris) < ENGINE_DEBRIS.indexOf(told.engineDebris) ||
      severity(outcome.verdict) < severity(told.verdict),
  );
  return isMilder ? told.reasons.filter(({ rule }) => rule !== "nothing-due") : [];
}

const said = ({ id, says, source }: FindingRule, it: BenchEvidence): Reason => ({
  rule: id,
  text: says(it),
  source: sourceText(typeof source === "function" ? source(it) : source),
});
