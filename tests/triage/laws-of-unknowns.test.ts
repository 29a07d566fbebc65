import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { severity } from "#shared/triage/verdict.ts";
import { forget, forgettable, trueCrafts } from "#tests/support/craft-arbitraries.ts";
import { plausibleFillings } from "#tests/support/plausible-fillings.ts";

const severityOf = (...[answers, onDate]: [Parameters<typeof judge>[0], string]) =>
  severity(judge(answers, onDate, TRIAGE_DEFAULTS).verdict);

/** More of them on demand: RUNS=100000. */
const RUNS = Number(process.env["RUNS"] ?? 4000);
const PATIENTLY = RUNS * 10 + 60_000;

describe("not knowing", () => {
  it(
    "never makes the verdict milder than the truth would, however much is forgotten",
    () => {
      fc.assert(
        fc.property(trueCrafts, fc.uniqueArray(forgettable, { minLength: 1 }), ({ answers, onDate }, forgotten) => {
          expect(severityOf(forget(answers, ...forgotten), onDate)).toBeGreaterThanOrEqual(severityOf(answers, onDate));
        }),
        { numRuns: RUNS },
      );
    },
    PATIENTLY,
  );

  it(
    "never makes the verdict milder than it was before one more thing was forgotten",
    () => {
      fc.assert(
        fc.property(trueCrafts, fc.uniqueArray(forgettable), forgettable, ({ answers, onDate }, already, oneMore) => {
          const before = forget(answers, ...already);
          expect(severityOf(forget(before, oneMore), onDate)).toBeGreaterThanOrEqual(severityOf(before, onDate));
        }),
        { numRuns: RUNS },
      );
    },
    PATIENTLY,
  );

  it(
    "of hours alone gives exactly the worst verdict over their whole range",
    () => {
      const hours = fc.constantFrom("engineHours", "lastRebuild.engineHours", "lastSlipSet.engineHours");
      fc.assert(
        fc.property(trueCrafts, hours, ({ answers, onDate }, forgotten) => {
          const forgetful = forget(answers, forgotten);
          const range = plausibleFillings(forgetful, onDate).find(({ answer }) => answer === forgotten);
          const worst = Math.max(...(range?.fillings ?? [answers]).map((filled) => severityOf(filled, onDate)));
          expect(severityOf(forgetful, onDate)).toBe(worst);
        }),
        { numRuns: RUNS / 4 },
      );
    },
    PATIENTLY,
  );
});
