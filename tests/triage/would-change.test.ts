import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { VERDICTS } from "#shared/triage/verdict.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import { aCraft, done, FORGOTTEN, modified, ON_DATE } from "#tests/support/a-craft.ts";
import { plausibleCrafts } from "#tests/support/craft-arbitraries.ts";
import { plausibleFillings } from "#tests/support/plausible-fillings.ts";

const ranked = (verdict: (typeof VERDICTS)[number]): number => VERDICTS.indexOf(verdict);

/** More of them on demand: RUNS=100000. */
const RUNS = Number(process.env["RUNS"] ?? 300);
const PATIENTLY = RUNS * 10 + 60_000;

const changes = (craft: Partial<Answers>) =>
  Object.fromEntries(wouldChange(aCraft(craft), ON_DATE, TRIAGE_DEFAULTS).map(({ answer, to }) => [answer, to]));

describe("wouldChange", () => {
  it.each<[string, Partial<Answers>, object]>([
    ["nothing, where nothing is due", { riding: "unknown", lastSlipSet: FORGOTTEN }, {}],
    ["nothing, where all is known", { engineHours: 250 }, {}],
    ["nothing, where a symptom decides", { symptoms: ["metal-in-oil"], riding: "unknown", builtYear: null }, {}],
    ["how it is ridden", { engineHours: 60, riding: "unknown" }, { riding: "not-due" }],
    [
      "neither of two, where each alone leaves it due",
      { engineHours: 60, riding: "unknown", mods: modified({ engine: null }) },
      {},
    ],
    ["the last slip setting", { engineHours: 150, lastSlipSet: FORGOTTEN }, { lastSlipSet: "not-due" }],
    ["the last rebuild", { builtYear: 2025, lastRebuild: FORGOTTEN }, { lastRebuild: "not-due" }],
    ["only its date", { builtYear: 2025, lastRebuild: done(null, 20) }, { "lastRebuild.date": "not-due" }],
    [
      "only its hours",
      { engineHours: 140, lastSlipSet: done("2026-08-01", null) },
      { "lastSlipSet.engineHours": "not-due" },
    ],
    [
      "the hours now, which also tell whether the slip has held",
      { engineHours: null, lastSlipSet: done("2026-08-01", 20), symptoms: ["gradual-boost-loss"] },
      { engineHours: "slip-check" },
    ],
    [
      "whatever of a half remembered setting would also tell the hours now",
      {
        engineHours: null,
        mods: modified({ charger: true }),
        lastRebuild: done("2027-01-01", 0),
        lastSlipSet: done(null, null),
      },
      { engineHours: "not-due", "lastSlipSet.date": "not-due", "lastSlipSet.engineHours": "not-due" },
    ],
    [
      "the date of a rebuild, which at fewer hours must have come before the setting",
      {
        builtYear: 2024,
        engineHours: 60,
        riding: "hard",
        lastRebuild: done(null, 10),
        lastSlipSet: done("2026-06-01", 30),
      },
      { "lastRebuild.date": "not-due" },
    ],
    [
      "the date of a setting, which if before the rebuild would show that to be as young",
      { builtYear: 2024, engineHours: 200, lastRebuild: done("2025-05-02", null), lastSlipSet: done(null, 125) },
      { "lastRebuild.engineHours": "not-due", "lastSlipSet.date": "not-due" },
    ],
    [
      "nothing at odds with the other service: a setting after a rebuild 10 h ago is as fresh",
      {
        lastRebuild: done("2026-06-01", 30),
        lastSlipSet: done("2026-12-01", null),
        symptoms: ["gradual-boost-loss"],
      },
      {},
    ],
    [
      "nothing at odds with the other service: two on one day lie at the same hours",
      {
        engineHours: 100,
        mods: modified({ charger: true }),
        lastRebuild: done("2026-06-01", null),
        lastSlipSet: done("2026-06-01", 25),
      },
      {},
    ],
    ["the year built", { builtYear: null }, { builtYear: "not-due" }],
    [
      "washers, build and rebuild, where ceramic is plausible",
      { unitFamily: "unknown", builtYear: 2009, washers: "unknown", lastRebuild: FORGOTTEN, symptoms: ["limp-mode"] },
      { unitFamily: "full-rebuild", washers: "full-rebuild", lastRebuild: "slip-check" },
    ],
  ])("names %s", (_because, craft, expected) => {
    expect(changes(craft)).toEqual(expected);
  });

  it("tries few hours even where a shop lets slip hold for longer than it lasts", () => {
    const settings = { ...TRIAGE_DEFAULTS, willNotHoldHours: 120 };
    const craft = aCraft({ engineHours: null });
    expect(wouldChange(craft, ON_DATE, settings)).toEqual([{ answer: "engineHours", to: "not-due" }]);
  });

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
