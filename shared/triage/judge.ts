import { sourceText } from "#shared/basics/source.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { ADVICE_RULES } from "#shared/triage/advice-rules.ts";
import { type Due, dueOf } from "#shared/triage/due.ts";
import { type EngineDebris, engineDebris } from "#shared/triage/engine-debris.ts";
import { type Findings, findingsOf } from "#shared/triage/findings.ts";
import { NOTHING_DUE, TRIAGE_RULES, type TriageRule } from "#shared/triage/triage-rules.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** A rule that held, in words, with its source. */
export type Reason = { readonly rule: string; readonly text: string; readonly source: string };

export type Judgement = {
  readonly verdict: Verdict;
  /** Every rule that held, worst first; never empty. */
  readonly reasons: readonly Reason[];
  /** What to do besides; changes no verdict. */
  readonly advice: readonly Reason[];
  readonly engineDebris: EngineDebris;
  readonly due: Due;
};

/**
 * Answers and a date to a verdict with its reasons. Same answers, date and settings: same verdict, always.
 * Every unknown is read as its worst plausible value, so not knowing never makes the verdict milder.
 */
export function judge(answers: Answers, onDate: string, settings: TriageSettings): Judgement {
  const findings = findingsOf(answers, onDate, settings);
  const held = TRIAGE_RULES.filter((rule) => rule.when(findings));
  const verdict = (held[0] ?? NOTHING_DUE).outcome;
  return {
    verdict,
    reasons: (held.length > 0 ? held : [NOTHING_DUE]).map((rule) => said(rule, findings)),
    advice: ADVICE_RULES.filter((rule) => rule.when(findings)).map((rule) => ({
      rule: rule.id,
      text: rule.says,
      source: sourceText(rule.source),
    })),
    engineDebris: engineDebris(findings, verdict),
    due: dueOf(findings),
  };
}

const said = ({ id, says, source }: TriageRule, findings: Findings): Reason => ({
  rule: id,
  text: says(findings),
  source: sourceText(typeof source === "function" ? source(findings) : source),
});
