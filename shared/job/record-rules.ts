import { sourceText } from "#shared/basics/source.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import type { Service } from "#shared/job/record-schema.ts";
import type { SlipRuleId } from "#shared/slip/slip-plan.ts";
import { SLIP_RULES } from "#shared/slip/slip-rules.ts";
import { findingsOf } from "#shared/triage/findings.ts";
import { settingSource, TRIAGE_SETTING_NOTES, type TriageSettings } from "#shared/triage/triage-settings.ts";

type RulesUsed = {
  /** The rules of the slip plan. */
  readonly basis: readonly SlipRuleId[];
  readonly answers: Answers;
  /** Was the final slip read? */
  readonly read: boolean;
};

/** The rules that the target, the decision and the next date come from, in words, each with its source. */
export function rulesUsed({ basis, answers, read }: RulesUsed, triage: TriageSettings): Service["rules"] {
  const slip = SLIP_RULES.filter(({ id }) => basis.includes(id)).map(({ id, text, source }) => {
    return { rule: id, text, source };
  });
  const { slipIntervalSetting } = findingsOf(answers, NO_DATE, triage);
  const clocks = ([slipIntervalSetting, "rebuildHours", "rebuildMonths"] as const).map((setting) => ({
    rule: setting,
    text: `${TRIAGE_SETTING_NOTES[setting].text}: ${triage[setting]}.`,
    source: sourceText(settingSource(triage, setting)),
  }));
  return [...slip, ...(read ? READING : []), ...clocks];
}

/** The interval depends on the craft alone. */
const NO_DATE = "2000-01-01";

const READING: Service["rules"] = [
  {
    rule: "uncertainty",
    text: "The uncertainty of the readings holds their spread, the tool's accuracy and its smallest step.",
    source: "JCGM 100:2008, 4.2, 4.3, 5.1.2 and G.4",
  },
  {
    rule: "decision",
    text: "The slip is accepted where its chances of lying over and under the band are each small enough.",
    source: "JCGM 106:2012, clauses 7 and 8",
  },
];
