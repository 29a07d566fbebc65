import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Answers, SYMPTOMS, type Symptom } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS, TriageSettingsSchema } from "#shared/triage/triage-settings.ts";
import { severity } from "#shared/triage/verdict.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import { plusDays } from "#shared/units/calendar-date.ts";
import { aCraft, done, modified, ON_DATE } from "#tests/support/a-craft.ts";
import { plausibleCrafts, uncheckedCrafts } from "#tests/support/craft-arbitraries.ts";
import { plainHours } from "#tests/support/plain-hours.ts";

const PATIENTLY = 60_000;
const MANY = { numRuns: 5000 };

const judged = (answers: Answers, onDate: string) => judge(answers, onDate, TRIAGE_DEFAULTS);
const severityOf = (answers: Answers, onDate: string) => severity(judged(answers, onDate).verdict);
const anyCraft = fc.oneof(plausibleCrafts, uncheckedCrafts);

/** The one exception: boost fades, and these more hours take the slip setting across 25 h. */
function crossesTheEdge(before: Answers, after: Answers, onDate: string): boolean {
  const [then, now] = [plainHours(before, onDate).slipLeast, plainHours(after, onDate).slipLeast];
  return before.symptoms.includes("gradual-boost-loss") && then < 25 && now >= 25 - 1e-7;
}

describe("never milder", () => {
  it(
    "for more hours, but across the 25 h edge of slip that will not hold",
    () => {
      const more = fc.oneof(fc.constantFrom(0.1, 1, 5, 25, 50, 100, 200), fc.integer({ min: 1, max: 400 }));
      fc.assert(
        fc.property(anyCraft, more, ({ answers, onDate }, hours) => {
          fc.pre(answers.engineHours !== null);
          const after = { ...answers, engineHours: Math.round((answers.engineHours! + hours) * 10) / 10 };
          fc.pre(!crossesTheEdge(answers, after, onDate));
          expect(severityOf(after, onDate)).toBeGreaterThanOrEqual(severityOf(answers, onDate));
        }),
        MANY,
      );
    },
    PATIENTLY,
  );

  it(
    "for more months",
    () => {
      fc.assert(
        fc.property(anyCraft, fc.integer({ min: 1, max: 1500 }), ({ answers, onDate }, days) => {
          expect(severityOf(answers, plusDays(onDate, days))).toBeGreaterThanOrEqual(severityOf(answers, onDate));
        }),
        MANY,
      );
    },
    PATIENTLY,
  );

  it(
    "for one more symptom",
    () => {
      fc.assert(
        fc.property(anyCraft, fc.constantFrom(...SYMPTOMS), ({ answers, onDate }, symptom) => {
          const after = { ...answers, symptoms: [...answers.symptoms, symptom] };
          expect(severityOf(after, onDate)).toBeGreaterThanOrEqual(severityOf(answers, onDate));
        }),
        MANY,
      );
    },
    PATIENTLY,
  );

  it(
    "for harder riding, a modified engine, a modified charger or a change since the slip was set",
    () => {
      const harder = fc.constantFrom<(it: Answers) => Answers>(
        (it) => ({ ...it, riding: it.riding === "easy" ? "mixed" : "hard" }),
        (it) => ({ ...it, riding: "hard" }),
        (it) => ({ ...it, mods: { ...it.mods, engine: true } }),
        (it) => ({ ...it, mods: { ...it.mods, charger: true } }),
        (it) => ({ ...it, mods: { ...it.mods, changedSinceSlip: true } }),
      );
      fc.assert(
        fc.property(anyCraft, harder, ({ answers, onDate }, change) => {
          expect(severityOf(change(answers), onDate)).toBeGreaterThanOrEqual(severityOf(answers, onDate));
        }),
        MANY,
      );
    },
    PATIENTLY,
  );
});

describe("the 25 h edge of slip that will not hold", () => {
  const fading = (hoursSinceSlip: number) =>
    aCraft({ engineHours: 40, lastSlipSet: done("2026-06-01", 40 - hoursSinceSlip), symptoms: ["gradual-boost-loss"] });

  it.each([
    [0, "full-rebuild"],
    [24, "full-rebuild"],
    [24.9, "full-rebuild"],
    [25, "slip-check"],
    [25.1, "slip-check"],
  ])("%d h after the slip was set: %s", (hours, verdict) => {
    expect(judged(fading(hours), ON_DATE).verdict).toBe(verdict);
  });

  it("is the only place where more hours are milder, and only while boost fades", () => {
    const other = (symptoms: readonly Symptom[], hours: number) => severityOf({ ...fading(hours), symptoms }, ON_DATE);
    for (const symptom of SYMPTOMS.filter((it) => it !== "gradual-boost-loss")) {
      expect(other([symptom], 25)).toBe(other([symptom], 24.9));
    }
    expect(other(["gradual-boost-loss"], 25)).toBeLessThan(other(["gradual-boost-loss"], 24.9));
    expect(other(["gradual-boost-loss", "limp-mode"], 25)).toBe(other(["gradual-boost-loss", "limp-mode"], 24.9));
  });
});

describe("the same answers on the same day", () => {
  it("give the same judgement, in whatever order the symptoms were named", () => {
    const withOrder = anyCraft.chain((craft) =>
      fc.record({
        craft: fc.constant(craft),
        symptoms: fc.shuffledSubarray([...craft.answers.symptoms], { minLength: craft.answers.symptoms.length }),
      }),
    );
    fc.assert(
      fc.property(withOrder, ({ craft: { answers, onDate }, symptoms }) => {
        const shuffled = { ...answers, symptoms };
        expect(judged(shuffled, onDate)).toEqual(judged(answers, onDate));
        expect(wouldChange(shuffled, onDate, TRIAGE_DEFAULTS)).toEqual(wouldChange(answers, onDate, TRIAGE_DEFAULTS));
      }),
      { numRuns: 1000 },
    );
  });

  it("give the same judgement where a symptom is named twice", () => {
    fc.assert(
      fc.property(anyCraft, ({ answers, onDate }) => {
        const twice = { ...answers, symptoms: [...answers.symptoms, ...answers.symptoms] };
        expect(judged(twice, onDate)).toEqual(judged(answers, onDate));
      }),
      { numRuns: 500 },
    );
  });

  it("are left as they were", () => {
    fc.assert(
      fc.property(anyCraft, ({ answers, onDate }) => {
        const before = structuredClone(answers);
        judged(answers, onDate);
        wouldChange(answers, onDate, TRIAGE_DEFAULTS);
        expect(answers).toEqual(before);
      }),
      { numRuns: 300 },
    );
  });
});

describe("the shop's numbers move the edges", () => {
  const verdict = (craft: Partial<Answers>, settings: Partial<typeof TRIAGE_DEFAULTS>) =>
    judge(aCraft(craft), ON_DATE, { ...TRIAGE_DEFAULTS, ...settings }).verdict;

  it.each<[keyof typeof TRIAGE_DEFAULTS, number, number, Partial<Answers>, string]>([
    ["slipHoursEasy", 40, 40.1, {}, "slip-check"],
    ["slipHoursMixed", 40, 40.1, { riding: "mixed" }, "slip-check"],
    ["slipHoursHard", 40, 40.1, { riding: "hard" }, "slip-check"],
    ["slipHoursEngineModified", 40, 40.1, { mods: modified({ engine: true }) }, "slip-check"],
    ["slipHoursChargerModified", 40, 40.1, { mods: modified({ charger: true }) }, "slip-check"],
    ["rebuildMonths", 16, 17, {}, "full-rebuild"],
    ["rebuildHours", 40, 40.1, {}, "full-rebuild"],
    ["willNotHoldHours", 40.1, 40, { symptoms: ["gradual-boost-loss"] }, "full-rebuild"],
    ["ceramicUntilYear", 2026, 2025, { unitFamily: "shim-stack", washers: "unknown" }, "full-rebuild"],
    ["hoursPerYear", 76, 75, { engineHours: null }, "slip-check"],
  ])("%s: %d, not %d", (setting, reaches, not, craft, worse) => {
    expect(verdict(craft, { [setting]: reaches })).toBe(worse);
    expect(verdict(craft, { [setting]: not })).not.toBe(worse);
  });

  it("refuses hours that would make hard riding milder than gentle, naming the field", () => {
    const parsed = TriageSettingsSchema.safeParse({ ...TRIAGE_DEFAULTS, slipHoursHard: 80 });
    expect(parsed.error!.issues.map(({ path }) => path)).toEqual([["slipHoursHard"]]);
    expect(TriageSettingsSchema.safeParse({ ...TRIAGE_DEFAULTS, slipHoursMixed: 100 }).success).toBe(true);
    expect(TriageSettingsSchema.parse(TRIAGE_DEFAULTS)).toEqual(TRIAGE_DEFAULTS);
  });
});
