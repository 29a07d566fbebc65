import { describe, expect, it } from "vitest";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import { NOTHING_DUE, TRIAGE_RULES } from "#shared/triage/triage-rules.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { severity } from "#shared/triage/verdict.ts";
import { aCraft, done, modified, ON_DATE } from "#tests/support/a-craft.ts";

const practice = "common practice, no published source";
const setting = "default of this project";

/** Because, the craft, the verdict, the only rules that hold, and the source of the first. */
type Example = readonly [
  because: string,
  craft: Partial<Answers>,
  verdict: string,
  rules: readonly string[],
  source: string,
];

const ceramic = { unitFamily: "shim-stack", builtYear: 2010, washers: "ceramic" } as const;
const rebuiltLately = done("2027-01-01", 20);
const slipAt = (hours: number) => ({ lastSlipSet: done("2026-06-01", hours) });

const stopRiding: readonly Example[] = [
  ["metal in the oil", { symptoms: ["metal-in-oil"] }, "stop-riding", ["metal-in-oil"], practice],
  ["grinding", { symptoms: ["grinding"] }, "stop-riding", ["grinding"], practice],
  ["sudden loss of boost", { symptoms: ["sudden-boost-loss"] }, "stop-riding", ["sudden-boost-loss"], practice],
  ["impeller wobbles or rubs", { symptoms: ["impeller-wobble"] }, "stop-riding", ["impeller-wobble"], practice],
  [
    "ceramic washers with any symptom: here limp mode, which alone is only a slip check",
    { ...ceramic, lastRebuild: rebuiltLately, symptoms: ["limp-mode"] },
    "stop-riding",
    ["ceramic-with-symptom", "limp-mode"],
    practice,
  ],
  [
    "limp mode together with gradual loss of boost",
    { symptoms: ["limp-mode", "gradual-boost-loss"] },
    "stop-riding",
    ["limp-with-fading-boost", "fading-boost"],
    setting,
  ],
];

const fullRebuild: readonly Example[] = [
  [
    "ceramic washers, no symptom, however fresh the rebuild",
    { ...ceramic, lastRebuild: rebuiltLately },
    "full-rebuild",
    ["ceramic-washers"],
    practice,
  ],
  [
    "24 months to the day since the rebuild",
    { builtYear: 2020, lastRebuild: done("2025-05-01", 20) },
    "full-rebuild",
    ["rebuild-months"],
    practice,
  ],
  ["24 months since built, from the start of 2025", { builtYear: 2025 }, "full-rebuild", ["rebuild-months"], practice],
  [
    "200 h exactly since the rebuild, slip set since",
    { engineHours: 220, lastRebuild: done("2026-01-01", 20), lastSlipSet: done("2027-04-01", 190) },
    "full-rebuild",
    ["rebuild-hours"],
    setting,
  ],
  ["200 h exactly since new", { engineHours: 200, ...slipAt(150) }, "full-rebuild", ["rebuild-hours"], setting],
  ["whine", { symptoms: ["whine"] }, "full-rebuild", ["whine"], setting],
  ["oil in the intake", { symptoms: ["oil-in-intake"] }, "full-rebuild", ["oil-in-intake"], setting],
  ["burnt smell", { symptoms: ["burnt-smell"] }, "full-rebuild", ["burnt-smell"], setting],
  [
    "gradual loss of boost 24.9 h after the slip was set: it will not hold",
    { ...slipAt(15.1), symptoms: ["gradual-boost-loss"] },
    "full-rebuild",
    ["slip-will-not-hold"],
    setting,
  ],
  [
    "gradual loss of boost 24 h after a rebuild, which sets the slip too",
    { lastRebuild: done("2027-01-01", 16), symptoms: ["gradual-boost-loss"] },
    "full-rebuild",
    ["slip-will-not-hold"],
    setting,
  ],
];

const slipCheck: readonly Example[] = [
  ["100 h exactly, gentle and standard", { engineHours: 100 }, "slip-check", ["slip-hours"], practice],
  ["75 h exactly, mixed riding", { engineHours: 75, riding: "mixed" }, "slip-check", ["slip-hours"], setting],
  ["50 h exactly, ridden hard", { engineHours: 50, riding: "hard" }, "slip-check", ["slip-hours"], setting],
  [
    "50 h exactly, engine modified",
    { engineHours: 50, mods: modified({ engine: true }) },
    "slip-check",
    ["slip-hours"],
    setting,
  ],
  [
    "30 h exactly, charger modified",
    { engineHours: 30, mods: modified({ charger: true }) },
    "slip-check",
    ["slip-hours"],
    setting,
  ],
  [
    "30 h, charger modified, even where engine and riding would allow 50",
    { engineHours: 30, riding: "hard", mods: modified({ engine: true, charger: true }) },
    "slip-check",
    ["slip-hours"],
    setting,
  ],
  [
    "100 h exactly since the slip was set, where floats make it 99.99999999999999",
    { engineHours: 160.7, ...slipAt(60.7) },
    "slip-check",
    ["slip-hours"],
    practice,
  ],
  [
    "modified since the slip was set",
    { mods: modified({ changedSinceSlip: true }) },
    "slip-check",
    ["changed-since-slip"],
    setting,
  ],
  [
    "gradual loss of boost 25 h exactly after the slip was set",
    { ...slipAt(15), symptoms: ["gradual-boost-loss"] },
    "slip-check",
    ["fading-boost"],
    practice,
  ],
  ["limp mode alone", { symptoms: ["limp-mode"] }, "slip-check", ["limp-mode"], setting],
];

const notDue: readonly Example[] = [
  ["the dull craft", {}, "not-due", ["nothing-due"], setting],
  ["99.9 h, gentle and standard", { engineHours: 99.9 }, "not-due", ["nothing-due"], setting],
  ["74.9 h, mixed riding", { engineHours: 74.9, riding: "mixed" }, "not-due", ["nothing-due"], setting],
  ["49.9 h, ridden hard", { engineHours: 49.9, riding: "hard" }, "not-due", ["nothing-due"], setting],
  [
    "49.9 h, engine modified",
    { engineHours: 49.9, mods: modified({ engine: true }) },
    "not-due",
    ["nothing-due"],
    setting,
  ],
  [
    "29.9 h, charger modified",
    { engineHours: 29.9, mods: modified({ charger: true }) },
    "not-due",
    ["nothing-due"],
    setting,
  ],
  [
    "one day short of 24 months since the rebuild",
    { builtYear: 2020, lastRebuild: done("2025-05-02", 20) },
    "not-due",
    ["nothing-due"],
    setting,
  ],
  ["199.9 h since new", { engineHours: 199.9, ...slipAt(150) }, "not-due", ["nothing-due"], setting],
  [
    "the rebuild is the later one: a slip set before it does not count",
    { engineHours: 130, builtYear: 2020, lastRebuild: done("2027-04-01", 120), lastSlipSet: done("2026-08-01", 5) },
    "not-due",
    ["nothing-due"],
    setting,
  ],
];

describe("triage, rule by rule", () => {
  it.each([...stopRiding, ...fullRebuild, ...slipCheck, ...notDue])("%s", (_because, craft, verdict, rules, source) => {
    const judged = judge(aCraft(craft), ON_DATE, TRIAGE_DEFAULTS);
    expect(judged.verdict).toBe(verdict);
    expect(judged.reasons.map(({ rule }) => rule)).toEqual(rules);
    expect(judged.reasons[0]!.source).toBe(source);
  });

  it("has an example in which each rule holds", () => {
    const examples = [...stopRiding, ...fullRebuild, ...slipCheck, ...notDue];
    const shown = new Set(examples.flatMap(([, , , rules]) => rules));
    expect([...shown].sort()).toEqual([...TRIAGE_RULES, NOTHING_DUE].map(({ id }) => id).sort());
  });

  it("tells when 24 months were up, in a year with and without a 29 February", () => {
    const rebuilt = aCraft({ builtYear: 2020, lastRebuild: done("2024-02-29", 10) });
    expect(judge(rebuilt, "2026-02-27", TRIAGE_DEFAULTS).verdict).toBe("not-due");
    expect(judge(rebuilt, "2026-02-28", TRIAGE_DEFAULTS).reasons[0]!.text).toContain("2026-02-28");
  });
});

describe("the table of rules", () => {
  it("stands worst first, so that the first rule that holds is the verdict", () => {
    const severities = TRIAGE_RULES.map(({ outcome }) => severity(outcome));
    expect(severities).toEqual([...severities].sort((one, other) => other - one));
  });

  it("names each rule once", () => {
    const ids = [...TRIAGE_RULES, NOTHING_DUE].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("gives each reason a whole sentence in plain words", () => {
    const crafts = [...stopRiding, ...fullRebuild, ...slipCheck, ...notDue].map(([, craft]) => aCraft(craft));
    const unknown = aCraft({ builtYear: null, engineHours: null });
    for (const craft of [...crafts, unknown]) {
      for (const { text } of judge(craft, ON_DATE, TRIAGE_DEFAULTS).reasons) {
        expect(text).toMatch(/^[A-Z0-9].{20,}\.$/);
        expect(text).not.toMatch(/null|undefined|NaN|Infinity/);
      }
    }
  });
});
