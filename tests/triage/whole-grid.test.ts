import { beforeAll, describe, expect, it } from "vitest";
import { type Answers, RIDING, SYMPTOMS, UNIT_FAMILIES, WASHERS } from "#shared/craft/vocabulary.ts";
import { ADVICE_RULES } from "#shared/triage/advice-rules.ts";
import { ENGINE_DEBRIS } from "#shared/triage/engine-debris.ts";
import { judge } from "#shared/triage/judge.ts";
import { NOTHING_DUE, TRIAGE_RULES } from "#shared/triage/triage-rules.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { severity, VERDICTS, type Verdict } from "#shared/triage/verdict.ts";
import { aCraft, done, FORGOTTEN, NEVER, ON_DATE } from "#tests/support/a-craft.ts";

const YES_NO_UNKNOWN = [true, false, null] as const;

const symptomSets = Array.from({ length: 2 ** SYMPTOMS.length }, (_, bits) =>
  SYMPTOMS.filter((_symptom, index) => bits & (1 << index)),
);

/** Years, hours and services in a few states each: fresh, due, overdue, forgotten. */
const clocks: readonly Partial<Answers>[] = [
  {},
  { builtYear: 2010, engineHours: 90 },
  { builtYear: null, engineHours: null },
  { builtYear: 2020, lastRebuild: done("2027-01-01", 20) },
  { builtYear: 2020, engineHours: 250, lastRebuild: done("2026-01-01", 50), lastSlipSet: done("2027-04-01", 220) },
  { lastRebuild: FORGOTTEN, lastSlipSet: FORGOTTEN },
  { builtYear: null, lastRebuild: done(null, null), lastSlipSet: NEVER },
];

/** Every answer that is a choice, in every combination, but the symptoms. */
function* choices(): Generator<Partial<Answers>> {
  for (const unitFamily of UNIT_FAMILIES)
    for (const washers of WASHERS)
      for (const riding of RIDING)
        for (const engine of YES_NO_UNKNOWN)
          for (const charger of YES_NO_UNKNOWN)
            for (const changedSinceSlip of YES_NO_UNKNOWN)
              yield { unitFamily, washers, riding, mods: { engine, charger, changedSinceSlip, boostPsi: null } };
}

const OUTCOMES: Readonly<Record<string, Verdict>> = Object.fromEntries(
  [...TRIAGE_RULES, NOTHING_DUE].map(({ id, outcome }) => [id, outcome]),
);

const seen = {
  combinations: 0,
  wrong: [] as string[],
  verdicts: new Set(),
  rules: new Set(),
  advice: new Set(),
  debris: new Set(),
};

function look(answers: Answers): void {
  const { verdict, reasons, advice, engineDebris } = judge(answers, ON_DATE, TRIAGE_DEFAULTS);
  const severities = reasons.map(({ rule }) => severity(OUTCOMES[rule]!));
  const worstFirst = severities.every((one, index) => index === 0 || one <= severities[index - 1]!);
  if (severities[0] !== severity(verdict) || !worstFirst) seen.wrong.push(JSON.stringify(answers));
  seen.combinations += 1;
  seen.verdicts.add(verdict);
  seen.debris.add(engineDebris);
  for (const { rule } of reasons) seen.rules.add(rule);
  for (const { rule } of advice) seen.advice.add(rule);
}

describe("every combination of the answers that are choices", () => {
  beforeAll(() => {
    // The choices and the symptoms meet in the ceramic rules and in none other, so one clock sees all of both.
    for (const choice of choices()) {
      for (const clock of clocks) look(aCraft({ ...clock, ...choice }));
      for (const symptoms of symptomSets) look(aCraft({ builtYear: 2010, ...choice, symptoms, notLooked: true }));
    }
    for (const clock of clocks)
      for (const unitFamily of UNIT_FAMILIES)
        for (const washers of WASHERS)
          for (const symptoms of symptomSets) look(aCraft({ ...clock, unitFamily, washers, symptoms }));
  }, 60_000);

  it("is looked at: 972 choices, 512 sets of symptoms, 7 states of the clocks", () => {
    expect(seen.combinations).toBe(972 * 7 + 972 * 512 + 7 * 9 * 512);
  });

  it("has a verdict and a reason, the verdict being the worst of the reasons and the reasons worst first", () => {
    expect(seen.wrong).toEqual([]);
  });

  it("leaves no rule, advice, verdict or state of the engine unseen", () => {
    expect([...seen.rules].sort()).toEqual(Object.keys(OUTCOMES).sort());
    expect([...seen.advice].sort()).toEqual(ADVICE_RULES.map(({ id }) => id).sort());
    expect([...seen.verdicts].sort()).toEqual([...VERDICTS].sort());
    expect([...seen.debris].sort()).toEqual([...ENGINE_DEBRIS].sort());
  });
});
