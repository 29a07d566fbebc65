import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Answers, SYMPTOMS } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { aCraft, done, FORGOTTEN, modified, ON_DATE } from "#tests/support/a-craft.ts";
import { plausibleCrafts } from "#tests/support/craft-arbitraries.ts";

const dueOf = (craft: Partial<Answers>) => judge(aCraft(craft), ON_DATE, TRIAGE_DEFAULTS).due;

// 100, 50 and 200 h, 24 months: see the shop's numbers; 150 h a year ranks hours against dates (default of this project).
describe("when it is due", () => {
  it.each<[string, Partial<Answers>, ReturnType<typeof dueOf>]>([
    [
      "new in 2026, 40 h: 60 h to the slip check at 150 h a year are nearer than the end of 2027",
      {},
      { kind: "slip-check", by: "2028-01-01", atEngineHours: 100 },
    ],
    [
      "just set: 100 h are 243 days, the 24 months are nearer",
      { builtYear: 2020, lastRebuild: done("2025-06-01", 10), lastSlipSet: done("2027-05-01", 40) },
      { kind: "full-rebuild", by: "2027-06-01", atEngineHours: 140 },
    ],
    [
      "the hours of the rebuild come before those of the slip",
      { engineHours: 190, lastSlipSet: done("2027-05-01", 190) },
      { kind: "full-rebuild", by: "2028-01-01", atEngineHours: 200 },
    ],
    ["ridden hard: sooner", { riding: "hard" }, { kind: "slip-check", by: "2028-01-01", atEngineHours: 50 }],
    [
      "charger modified: sooner still, and already past",
      { mods: modified({ charger: true }) },
      { kind: "slip-check", by: "2028-01-01", atEngineHours: 30 },
    ],
    ["the months long past", { builtYear: 2020 }, { kind: "full-rebuild", by: "2022-01-01", atEngineHours: 100 }],
    [
      "the hours now unknown: those at the services still tell",
      { engineHours: null, lastRebuild: done("2027-01-01", 20), lastSlipSet: done("2027-02-01", 33.3) },
      { kind: "slip-check", by: "2029-01-01", atEngineHours: 133.3 },
    ],
    [
      "services forgotten: as if there were none",
      { lastRebuild: FORGOTTEN, lastSlipSet: FORGOTTEN },
      { kind: "slip-check", by: "2028-01-01", atEngineHours: 100 },
    ],
    [
      "hours at the slip setting unknown: as early as it may have been",
      { engineHours: 400, builtYear: 2026, lastSlipSet: done("2027-04-01", null) },
      { kind: "full-rebuild", by: "2028-01-01", atEngineHours: 200 },
    ],
    [
      "no date known",
      { builtYear: null, lastRebuild: done(null, 20) },
      { kind: "full-rebuild", by: null, atEngineHours: 120 },
    ],
    [
      "nothing known",
      { builtYear: null, engineHours: null, lastRebuild: done(null, null), lastSlipSet: FORGOTTEN },
      { kind: "full-rebuild", by: null, atEngineHours: null },
    ],
    [
      "clocks that run out together are a rebuild",
      { engineHours: 150, lastSlipSet: done("2027-01-01", 100) },
      { kind: "full-rebuild", by: "2028-01-01", atEngineHours: 200 },
    ],
  ])("%s", (_because, craft, due) => {
    expect(dueOf(craft)).toEqual(due);
  });

  it("shows hours as a meter does", () => {
    expect(dueOf({ engineHours: 60, lastRebuild: done("2027-02-01", 30.3) }).atEngineHours).toBe(130.3);
    expect(dueOf({ engineHours: 60, lastRebuild: done("2027-02-01", null) }).atEngineHours).toBe(123.4);
  });

  it("goes by the clocks, whatever is noticed", () => {
    fc.assert(
      fc.property(plausibleCrafts, fc.subarray([...SYMPTOMS]), ({ answers, onDate }, symptoms) => {
        const due = (it: Answers) => judge(it, onDate, TRIAGE_DEFAULTS).due;
        expect(due({ ...answers, symptoms })).toEqual(due(answers));
      }),
      { numRuns: 500 },
    );
  });

  it("has come where a clock is a reason of the verdict, and not before", () => {
    fc.assert(
      fc.property(plausibleCrafts, ({ answers, onDate }) => {
        const { due, reasons } = judge(answers, onDate, TRIAGE_DEFAULTS);
        const held = new Set(reasons.map(({ rule }) => rule));
        expect(held.has("rebuild-months")).toBe(due.by === null || due.by <= onDate);
        if (answers.engineHours === null || due.atEngineHours === null) return;
        const hoursAreUp = held.has("rebuild-hours") || [...held].some((rule) => rule.startsWith("slip-hours"));
        // To a tenth: a range of hours ends between two readings of the meter.
        if (hoursAreUp) expect(due.atEngineHours).toBeLessThanOrEqual(answers.engineHours + 0.05);
        else expect(due.atEngineHours).toBeGreaterThanOrEqual(answers.engineHours - 0.05);
      }),
      { numRuns: 3000 },
    );
  }, 60_000);
});
