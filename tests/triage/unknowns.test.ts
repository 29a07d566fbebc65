import { describe, expect, it } from "vitest";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { aCraft, done, FORGOTTEN, modified, ON_DATE } from "#tests/support/a-craft.ts";

type Example = readonly [because: string, craft: Partial<Answers>, verdict: string, rules: readonly string[]];

const nothing = ["nothing-due"];
const early = { unitFamily: "shim-stack", builtYear: 2010, washers: "unknown" } as const;
const old = ["ceramic-washers", "rebuild-months"];

const washers: readonly Example[] = [
  ["a shim-stack unit of 2010, never rebuilt, may be ceramic", early, "full-rebuild", old],
  ["one of 2011 is not", { ...early, builtYear: 2011 }, "full-rebuild", ["rebuild-months"]],
  ["one of an unknown year may be", { ...early, builtYear: null }, "full-rebuild", old],
  ["a unit of unknown build of 2010 may be", { ...early, unitFamily: "unknown" }, "full-rebuild", old],
  ["a set-nut unit is not", { ...early, unitFamily: "set-nut" }, "full-rebuild", ["rebuild-months"]],
  ["a known rebuild means metal", { ...early, lastRebuild: done("2027-01-01", 20) }, "not-due", nothing],
  [
    "a known rebuild of no known date too",
    { ...early, lastRebuild: done(null, 20) },
    "full-rebuild",
    ["rebuild-months"],
  ],
  ["a forgotten rebuild does not", { ...early, lastRebuild: FORGOTTEN }, "full-rebuild", old],
  [
    "ceramic is believed after a rebuild, where the owner says so",
    { ...early, washers: "ceramic", lastRebuild: done("2027-01-01", 20) },
    "full-rebuild",
    ["ceramic-washers"],
  ],
  ["ceramic is believed where it is not plausible", { washers: "ceramic" }, "full-rebuild", ["ceramic-washers"]],
  [
    "washers that may be ceramic, with a symptom: stop",
    { ...early, symptoms: ["limp-mode"] },
    "stop-riding",
    ["ceramic-with-symptom", "rebuild-months", "limp-mode"],
  ],
];

const services: readonly Example[] = [
  ["a forgotten rebuild counts as none: from the start of 2026", { lastRebuild: FORGOTTEN }, "not-due", nothing],
  ["and from the start of 2025", { builtYear: 2025, lastRebuild: FORGOTTEN }, "full-rebuild", ["rebuild-months"]],
  [
    "a rebuild of no known date likewise",
    { builtYear: 2025, lastRebuild: done(null, 20) },
    "full-rebuild",
    ["rebuild-months"],
  ],
  ["year unknown too: over 24 months", { builtYear: null }, "full-rebuild", ["rebuild-months"]],
  [
    "year unknown, but not the date of the rebuild",
    { builtYear: null, lastRebuild: done("2027-01-01", 20) },
    "not-due",
    nothing,
  ],
  [
    "a forgotten slip setting counts as none since the rebuild",
    { engineHours: 130, lastRebuild: done("2026-06-01", 40), lastSlipSet: FORGOTTEN },
    "not-due",
    nothing,
  ],
  [
    "and it is due where the rebuild is 100 h ago",
    { engineHours: 140, lastRebuild: done("2026-06-01", 40), lastSlipSet: FORGOTTEN },
    "slip-check",
    ["slip-hours"],
  ],
  [
    "a forgotten slip setting, never rebuilt: since new",
    { engineHours: 100, lastSlipSet: FORGOTTEN },
    "slip-check",
    ["slip-hours"],
  ],
  [
    "a known hour count is used where its date is unknown",
    { engineHours: 150, lastSlipSet: done(null, 51) },
    "not-due",
    nothing,
  ],
  ["and it is due at 100 h", { engineHours: 150, lastSlipSet: done(null, 50) }, "slip-check", ["slip-hours"]],
];

/** 150 h a year: 243 days are 99.79 h, 244 days 100.2 h. */
const hours: readonly Example[] = [
  [
    "hours now unknown: 243 days since the slip was set at 20 h are under 100 h",
    { engineHours: null, builtYear: 2027, lastRebuild: done("2026-08-31", 20) },
    "not-due",
    nothing,
  ],
  [
    "244 days are over 100 h",
    { engineHours: null, builtYear: 2027, lastRebuild: done("2026-08-30", 20) },
    "slip-check",
    ["slip-hours"],
  ],
  [
    "hours at the service unknown: 244 days, capped by the hours now",
    { engineHours: 99, lastRebuild: done("2026-08-30", null) },
    "not-due",
    nothing,
  ],
  ["not capped at 110 h", { engineHours: 110, lastRebuild: done("2026-08-30", null) }, "slip-check", ["slip-hours"]],
  [
    "hours now unknown, never rebuilt: since the start of 2026 up to 199 h, so no rebuild yet",
    { engineHours: null },
    "slip-check",
    ["slip-hours"],
  ],
  [
    "nothing known of age and hours",
    { engineHours: null, builtYear: null },
    "full-rebuild",
    ["rebuild-months", "rebuild-hours", "slip-hours"],
  ],
  [
    "boost fades and the hours since the slip was set are unknown: it may not hold",
    { engineHours: 90, lastSlipSet: done("2026-06-01", null), symptoms: ["gradual-boost-loss"] },
    "full-rebuild",
    ["slip-will-not-hold"],
  ],
  [
    "boost fades and the slip setting is forgotten: it may not hold",
    { engineHours: 90, lastSlipSet: FORGOTTEN, symptoms: ["gradual-boost-loss"] },
    "full-rebuild",
    ["slip-will-not-hold"],
  ],
  [
    "a slip set after the rebuild cannot lie further back than it",
    { engineHours: 100, lastRebuild: done("2026-06-01", 90), lastSlipSet: done("2026-07-01", null), riding: "hard" },
    "not-due",
    nothing,
  ],
  [
    "a rebuild before a slip setting 210 h ago lies as far back, however few days there are",
    { engineHours: 300, lastRebuild: done("2026-05-01", null), lastSlipSet: done("2026-06-01", 90) },
    "full-rebuild",
    ["rebuild-hours", "slip-hours"],
  ],
];

const use: readonly Example[] = [
  ["riding unknown is hard: due at 50 h", { engineHours: 50, riding: "unknown" }, "slip-check", ["slip-hours"]],
  ["and not before", { engineHours: 49, riding: "unknown" }, "not-due", nothing],
  [
    "engine unknown is modified: due at 50 h",
    { engineHours: 50, mods: modified({ engine: null }) },
    "slip-check",
    ["slip-hours"],
  ],
  ["and not before", { engineHours: 49, mods: modified({ engine: null }) }, "not-due", nothing],
  [
    "charger unknown is modified: due at 30 h",
    { engineHours: 30, mods: modified({ charger: null }) },
    "slip-check",
    ["slip-hours"],
  ],
  ["and not before", { engineHours: 29, mods: modified({ charger: null }) }, "not-due", nothing],
  [
    "not sure whether it was changed since: it was",
    { mods: modified({ changedSinceSlip: null }) },
    "slip-check",
    ["changed-since-slip"],
  ],
];

describe("what is not known is taken at its worst plausible value", () => {
  it.each([...washers, ...services, ...hours, ...use])("%s", (_because, craft, verdict, rules) => {
    const judged = judge(aCraft(craft), ON_DATE, TRIAGE_DEFAULTS);
    expect(judged.reasons.map(({ rule }) => rule)).toEqual(rules);
    expect(judged.verdict).toBe(verdict);
  });

  it("says so in the reason", () => {
    const [months, hoursRun] = judge(aCraft({ engineHours: null, builtYear: null }), ON_DATE, TRIAGE_DEFAULTS).reasons;
    expect(months!.text).toBe("Nobody knows how old the last rebuild is. We take it as over 24 months.");
    expect(hoursRun!.text).toBe("Nobody knows how long it has run since it was rebuilt, or new. The limit is 200 h.");
    const range = judge(aCraft({ engineHours: null }), ON_DATE, TRIAGE_DEFAULTS).reasons[0]!.text;
    expect(range).toBe("It may have run 199 h since the slip was set. The limit for this craft is 100 h.");
  });
});
