import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { plausibleCrafts, uncheckedCrafts } from "#tests/support/craft-arbitraries.ts";
import { plainTriage } from "#tests/support/plain-triage.ts";

/** Both judgements without their words, and the hours without what floats leave behind the tenth. */
const judged = (answers: Answers, onDate: string) => {
  const { verdict, reasons, advice, engineDebris, due } = judge(answers, onDate, TRIAGE_DEFAULTS);
  return { verdict, reasons: told(reasons), advice: told(advice), engineDebris, kind: due.kind, by: due.by };
};
const plainlyJudged = (answers: Answers, onDate: string) => {
  const { verdict, reasons, advice, engineDebris, due } = plainTriage(answers, onDate);
  return { verdict, reasons: told(reasons), advice: told(advice), engineDebris, kind: due.kind, by: due.by };
};
const told = (reasons: readonly { rule: string; source: string }[]) =>
  reasons.map(({ rule, source }) => `${rule}: ${source}`).sort();

const dueHours = (answers: Answers, onDate: string) => ({
  rules: judge(answers, onDate, TRIAGE_DEFAULTS).due.atEngineHours,
  plain: plainTriage(answers, onDate).due.atEngineHours,
});

describe("the table of rules and a second triage written by hand as plain ifs", () => {
  it.each([
    ["plausible answers", plausibleCrafts],
    ["any answers that the schema takes, contradictions included", uncheckedCrafts],
  ])("agree on verdict, reasons, sources, advice, engine debris and due: %s", (_, crafts) => {
    fc.assert(
      fc.property(crafts, ({ answers, onDate }) => {
        expect(judged(answers, onDate)).toEqual(plainlyJudged(answers, onDate));
        const { rules, plain } = dueHours(answers, onDate);
        if (plain === null) expect(rules).toBeNull();
        else expect(Math.abs(rules! - plain)).toBeLessThanOrEqual(0.0501);
      }),
      { numRuns: Number(process.env["RUNS"] ?? 10_000) },
    );
  });
});
