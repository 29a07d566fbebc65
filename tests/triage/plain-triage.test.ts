import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { plausibleCrafts, uncheckedCrafts } from "#tests/support/craft-arbitraries.ts";
import { type PlainJudgement, plainTriage } from "#tests/support/plain-triage.ts";

type Told = readonly { readonly rule: string; readonly source: string }[];
type Judged = Pick<PlainJudgement, "verdict" | "engineDebris" | "due"> & {
  readonly reasons: Told;
  readonly advice: Told;
};

/** A judgement without its words, and without the hours, which floats leave apart behind the tenth. */
const inShort = ({ verdict, reasons, advice, engineDebris, due }: Judged) =>
  [verdict, engineDebris, due.kind, due.by, "because", ...told(reasons), "besides", ...told(advice)].join(" | ");
const told = (reasons: Told) => reasons.map(({ rule, source }) => `${rule}: ${source}`).sort();

/** More of them on demand: RUNS=100000. */
const RUNS = Number(process.env["RUNS"] ?? 10_000);
const PATIENTLY = RUNS * 10 + 60_000;

describe("the table of rules and a second triage written by hand as plain ifs", () => {
  it.each([
    ["plausible answers", plausibleCrafts],
    ["any answers that the schema takes, contradictions included", uncheckedCrafts],
  ])(
    "agree on verdict, reasons, sources, advice, engine debris and due: %s",
    (_, crafts) => {
      fc.assert(
        fc.property(crafts, ({ answers, onDate }) => {
          const [byRules, plainly] = [judge(answers, onDate, TRIAGE_DEFAULTS), plainTriage(answers, onDate)];
          expect(inShort(byRules)).toBe(inShort(plainly));
          const [hours, plainHours] = [byRules.due.atEngineHours, plainly.due.atEngineHours];
          if (hours === null || plainHours === null) expect(hours).toBe(plainHours);
          else expect(Math.abs(hours - plainHours)).toBeLessThanOrEqual(0.0501);
        }),
        { numRuns: RUNS },
      );
    },
    PATIENTLY,
  );
});
