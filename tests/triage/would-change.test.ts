import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { VERDICTS } from "#shared/triage/verdict.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import { plausibleCrafts } from "#tests/support/craft-arbitraries.ts";
import { plausibleFillings } from "#tests/support/plausible-fillings.ts";

const ranked = (verdict: (typeof VERDICTS)[number]): number => VERDICTS.indexOf(verdict);

/** More of them on demand: RUNS=100000. */
const RUNS = Number(process.env["RUNS"] ?? 300);
const PATIENTLY = RUNS * 10 + 60_000;

describe("wouldChange", () => {
  it(
    "lists each unknown whose best plausible value is milder, with that verdict: as found by trying a grid of values",
    () => {
      fc.assert(
        fc.property(plausibleCrafts, ({ answers, onDate }) => {
          const now = ranked(judge(answers, onDate, TRIAGE_DEFAULTS).verdict);
          const expected = plausibleFillings(answers, onDate).flatMap(({ answer, fillings }) => {
            const mildest = Math.min(...fillings.map((it) => ranked(judge(it, onDate, TRIAGE_DEFAULTS).verdict)));
            return mildest < now ? [{ answer, to: VERDICTS[mildest] }] : [];
          });
          expect(wouldChange(answers, onDate, TRIAGE_DEFAULTS)).toEqual(expected);
        }),
        { numRuns: RUNS },
      );
    },
    PATIENTLY,
  );
});
