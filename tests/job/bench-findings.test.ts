import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { BenchEvidence, PartFound } from "#shared/job/bench-evidence.ts";
import { benchFindings, judgeEvidence } from "#shared/job/bench-findings.ts";
import { FINDING_RULES, NOT_OPENED, NOTHING_FOUND } from "#shared/job/finding-rules.ts";
import { NEXT_STEPS } from "#shared/job/next-steps.ts";
import {
  type BenchSheet,
  INSPECTED_PARTS,
  type InspectedPart,
  PART_CONDITIONS,
  type SheetEntry,
  type SheetStepId,
} from "#shared/job/sheet-entry.ts";
import { partsToInspect } from "#shared/job/sheet-steps.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import { DEMO_SHOP, type ShopSettings } from "#shared/shop/shop-settings.ts";
import { ENGINE_DEBRIS } from "#shared/triage/engine-debris.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { severity } from "#shared/triage/verdict.ts";
import { aCraft, ON_DATE } from "#tests/support/a-craft.ts";
import { aClosedUnit, anInspection } from "#tests/support/an-inspection.ts";
import { plausibleCrafts } from "#tests/support/craft-arbitraries.ts";

const debris = (it: BenchEvidence) => ENGINE_DEBRIS.indexOf(judgeEvidence(it).engineDebris);
const verdict = (it: BenchEvidence) => severity(judgeEvidence(it).verdict);
const rules = (it: BenchEvidence) => judgeEvidence(it).reasons.map(({ rule }) => rule);

describe("what the failures do to the engine (common practice, no published source)", () => {
  it.each([
    ["drive-gear", "likely"],
    ["needle-bearings", "likely"],
    ["friction-washers", "likely"],
    ["shaft", "likely"],
    ["ball-bearings", "unlikely"],
  ] as const)("a broken %s: debris %s, and the craft is not ridden", (part, engineDebris) => {
    expect(judgeEvidence(anInspection({ parts: { [part]: "broken" } }))).toMatchObject({
      engineDebris,
      verdict: "stop-riding",
      work: "stop-riding",
    });
  });

  it("worn friction washers: no debris, and a rebuild", () => {
    expect(judgeEvidence(anInspection({ parts: { "friction-washers": "worn" } }))).toMatchObject({
      engineDebris: "unlikely",
      work: "full-rebuild",
    });
  });

  it("a needle that is missing went into the engine", () => {
    expect(judgeEvidence(anInspection({ needles: { counted: 11, belong: 12 } }))).toMatchObject({
      engineDebris: "likely",
      verdict: "stop-riding",
    });
  });
});

describe("the needle count", () => {
  it.each([
    ["not counted", { counted: null, belong: 12 }, {}, "possible"],
    ["one too many", { counted: 13, belong: 12 }, {}, "possible"],
    ["all there", { counted: 12, belong: 12 }, {}, "unlikely"],
    ["counted and called whole, where the shop has no number", { counted: 12, belong: null }, {}, "unlikely"],
    [
      "counted by nobody who looked at them, where the shop has no number",
      { counted: 12, belong: null },
      { "needle-bearings": "unseen" },
      "possible",
    ],
  ] as const)("%s", (_said, needles, parts, engineDebris) => {
    expect(judgeEvidence(anInspection({ needles, parts })).engineDebris).toBe(engineDebris);
  });
});

describe("the as-found slip", () => {
  it.each([
    ["low soon after it was set: it does not hold", { slip: 11, hoursSinceSlipSet: 20 }, "full-rebuild"],
    ["low after long use: it is set again", { slip: 11, hoursSinceSlipSet: 25 }, "slip-check"],
    ["where it should be, soon after it was set", { slip: 12, hoursSinceSlipSet: 20 }, "slip-check"],
    ["at the unit's ceiling", { slip: 18 }, "slip-check"],
  ] as const)("%s", (_said, change, work) => {
    expect(judgeEvidence(anInspection(change)).work).toBe(work);
  });

  it("over the ceiling, gear and shaft are looked at first", () => {
    const over = { slip: 18.1, opened: false } as const;
    expect(judgeEvidence(aClosedUnit(over))).toMatchObject({ work: "stop-riding", engineDebris: "unlikely" });
    expect(judgeEvidence(anInspection({ slip: 18.1 })).work).toBe("slip-check");
  });

  it("under half of its band, a friction washer may be broken until somebody has looked", () => {
    expect(judgeEvidence(aClosedUnit({ slip: 5.9 })).engineDebris).toBe("possible");
    expect(judgeEvidence(aClosedUnit({ slip: 6 })).engineDebris).toBe("unlikely");
  });
});

describe("laws", () => {
  const found = fc.constantFrom<PartFound>("good", "worn", "broken", "unseen");
  const evidence: fc.Arbitrary<BenchEvidence> = fc.record({
    opened: fc.constant(true),
    parts: fc.record(Object.fromEntries(INSPECTED_PARTS.map((part) => [part, found]))) as fc.Arbitrary<
      BenchEvidence["parts"]
    >,
    needles: fc.record({
      counted: fc.option(fc.integer({ min: 0, max: 14 })),
      belong: fc.option(fc.integer({ min: 10, max: 14 })),
    }),
    slip: fc.option(fc.double({ min: 0, max: 30, noNaN: true })),
    band: fc.option(fc.constantFrom({ low: 12, high: 13 }, { low: 17.5, high: 18.1 })),
    ceiling: fc.constant(18),
    hoursSinceSlipSet: fc.constantFrom(0, 24, 25, 100),
    triage: fc.constant(TRIAGE_DEFAULTS),
    told: plausibleCrafts.map(({ answers, onDate }) => judge(answers, onDate, TRIAGE_DEFAULTS)),
  });
  const aPart = fc.constantFrom(...INSPECTED_PARTS);
  const withPart = (it: BenchEvidence, part: InspectedPart, as: PartFound) => ({
    ...it,
    parts: { ...it.parts, [part]: as },
  });

  it("a worse part never makes debris, verdict or work milder", () => {
    fc.assert(
      fc.property(evidence, aPart, (it, part) => {
        const [good, worn, broken] = PART_CONDITIONS.map((condition) => withPart(it, part, condition));
        for (const [better, worse] of [
          [good!, worn!],
          [worn!, broken!],
        ] as const) {
          expect(debris(worse)).toBeGreaterThanOrEqual(debris(better));
          expect(verdict(worse)).toBeGreaterThanOrEqual(verdict(better));
        }
      }),
      { numRuns: 2000 },
    );
  });

  it("a part that nobody looked at never gets a milder verdict than any condition it may be in", () => {
    fc.assert(
      fc.property(evidence, aPart, fc.constantFrom(...PART_CONDITIONS), (it, part, condition) => {
        const [unseen, filled] = [withPart(it, part, "unseen"), withPart(it, part, condition)];
        expect(verdict(unseen)).toBeGreaterThanOrEqual(verdict(filled));
        // "Possible" is the word for debris that some filling-in would make likely: the engine stays off for both.
        expect(debris(unseen)).toBeGreaterThanOrEqual(Math.min(debris(filled), ENGINE_DEBRIS.indexOf("possible")));
      }),
      { numRuns: 2000 },
    );
  });

  it("needles that nobody counted never get a milder verdict than any count", () => {
    fc.assert(
      fc.property(evidence, fc.integer({ min: 0, max: 14 }), (it, counted) => {
        const unknown = { ...it, needles: { ...it.needles, counted: null } };
        const filled = { ...it, needles: { ...it.needles, counted } };
        expect(verdict(unknown)).toBeGreaterThanOrEqual(verdict(filled));
        expect(debris(unknown)).toBeGreaterThanOrEqual(Math.min(debris(filled), ENGINE_DEBRIS.indexOf("possible")));
      }),
      { numRuns: 2000 },
    );
  });

  it("slip that nobody read before the unit was opened never gets a milder verdict than any reading", () => {
    fc.assert(
      fc.property(evidence, fc.double({ min: 0, max: 30, noNaN: true }), (it, slip) => {
        const [unknown, filled] = [
          { ...it, slip: null },
          { ...it, slip },
        ];
        expect(verdict(unknown)).toBeGreaterThanOrEqual(verdict(filled));
        expect(debris(unknown)).toBeGreaterThanOrEqual(Math.min(debris(filled), ENGINE_DEBRIS.indexOf("possible")));
      }),
      { numRuns: 2000 },
    );
  });

  it("one needle fewer never makes it milder, down from the full count", () => {
    fc.assert(
      fc.property(evidence, fc.integer({ min: 1, max: 14 }), (it, counted) => {
        fc.pre(it.needles.belong === null || counted <= it.needles.belong);
        const more = { ...it, needles: { ...it.needles, counted } };
        const fewer = { ...it, needles: { ...it.needles, counted: counted - 1 } };
        expect(verdict(fewer)).toBeGreaterThanOrEqual(verdict(more));
        expect(debris(fewer)).toBeGreaterThanOrEqual(debris(more));
      }),
      { numRuns: 2000 },
    );
  });

  it("the open unit is never milder than what the owner was told, whatever is found", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          evidence,
          evidence.map((it) => aClosedUnit({ told: it.told, slip: it.slip })),
        ),
        (it) => {
          expect(verdict(it)).toBeGreaterThanOrEqual(severity(it.told.verdict));
          expect(debris(it)).toBeGreaterThanOrEqual(ENGINE_DEBRIS.indexOf(it.told.engineDebris));
          expect(judgeEvidence(it).reasons.length).toBeGreaterThan(0);
          expect(judgeEvidence(it).nextSteps.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("the engine stays off exactly where debris is not unlikely", () => {
    fc.assert(
      fc.property(evidence, (it) => {
        const { engineDebris, nextSteps } = judgeEvidence(it);
        const steps = nextSteps.map(({ rule }) => rule);
        expect(steps.includes("engine-stays-off")).toBe(engineDebris !== "unlikely");
        expect(steps.includes("engine-out-and-cleaned")).toBe(engineDebris === "likely");
        expect(steps.includes("engine-looked-at")).toBe(engineDebris === "possible");
      }),
    );
  });
});

describe("what is said", () => {
  it("names every broken part in one sentence, with its source", () => {
    const [reason] = judgeEvidence(anInspection({ parts: { "drive-gear": "broken", shaft: "broken" } })).reasons;
    expect(reason).toEqual({
      rule: "broken-and-thrown-in",
      text: "Broken: drive gear, shaft. Pieces have likely gone into the engine.",
      source: "common practice, no published source",
    });
  });

  it("says so where nothing was found, and where nobody has looked yet", () => {
    expect(rules(anInspection())).toEqual(["nothing-found"]);
    expect(rules(aClosedUnit())).toEqual(["not-opened"]);
  });

  it("repeats what the owner noticed where that was worse than what is found", () => {
    const told = judge(aCraft({ symptoms: ["metal-in-oil"] }), ON_DATE, TRIAGE_DEFAULTS);
    const judged = judgeEvidence(anInspection({ told }));
    expect(judged).toMatchObject({ engineDebris: "likely", verdict: "stop-riding" });
    expect(judged.reasons.map(({ rule }) => rule)).toEqual(["metal-in-oil", "nothing-found"]);
  });

  it("gives each rule and each step one id, and the worst come first", () => {
    const ids = [...FINDING_RULES, NOTHING_FOUND, NOT_OPENED, ...NEXT_STEPS].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const rank = FINDING_RULES.map(
      ({ outcome }) => ENGINE_DEBRIS.indexOf(outcome.engineDebris) * 10 + severity(outcome.verdict),
    );
    expect(rank).toEqual(rank.toSorted((one, other) => other - one));
  });
});

describe("read off the bench sheet", () => {
  const tool = { kind: "electronic", accuracyPercent: 1, resolution: 0.1 } as const;
  const settings: ShopSettings = {
    ...DEMO_SHOP,
    bench: { ...DEMO_SHOP.bench, needles: { ...DEMO_SHOP.bench.needles, "set-nut": 12 } },
  };
  const job = {
    answers: aCraft(),
    plan: planJob(aCraft(), ON_DATE, settings),
    agreed: null,
    bookedAt: Date.UTC(2027, 4, 1, 16),
  };
  const sheetOf = (entries: Partial<Record<SheetStepId, SheetEntry>>): BenchSheet =>
    Object.fromEntries(
      Object.entries(entries).map(([step, entry]) => [step, { step, version: 1, at: 0, by: "Ada", entry }]),
    );
  const good = Object.fromEntries(INSPECTED_PARTS.map((part) => [part, { condition: "good", note: null }] as const));
  const inspect = (parts: object = {}): SheetEntry =>
    ({ kind: "inspect", parts: { ...good, ...parts }, unitFamily: null, boostPsi: null, serial: null }) as SheetEntry;
  const all = {
    "as-found-slip": { kind: "slip", readings: [12.4, 12.5, 12.6], breakaway: null, tool, why: null },
    inspect: inspect(),
    "needles-out": { kind: "count", needles: 12, why: null },
  } as const satisfies Partial<Record<SheetStepId, SheetEntry>>;
  const findings = (change: Partial<Record<SheetStepId, SheetEntry>>) =>
    benchFindings(job, sheetOf({ ...all, ...change }), settings);

  it("an empty sheet says nothing more than the owner did", () => {
    expect(benchFindings(job, {}, settings)).toMatchObject({
      opened: false,
      engineDebris: "unlikely",
      work: "slip-check",
    });
  });

  it("a good unit", () => {
    expect(findings({})).toMatchObject({ opened: true, engineDebris: "unlikely", work: "slip-check" });
  });

  it.each<[string, Partial<Record<SheetStepId, SheetEntry>>, string]>([
    [
      "a needle short of the family's count",
      { "needles-out": { kind: "count", needles: 11, why: "one gone" } },
      "likely",
    ],
    ["a skipped count", { "needles-out": { kind: "skipped", why: "no tray" } }, "possible"],
    ["a broken washer", { inspect: inspect({ "friction-washers": { condition: "broken", note: null } }) }, "likely"],
    ["a part left out", { inspect: inspect({ "drive-gear": undefined }) }, "possible"],
  ])("%s", (_said, change, engineDebris) => {
    expect(findings(change).engineDebris).toBe(engineDebris);
  });

  it("a closed unit looked at from outside is not judged by what nobody could see", () => {
    const outside = (gear: string): SheetEntry => {
      const seen = partsToInspect({ work: "slip-check", unitFamily: "set-nut" });
      const parts = Object.fromEntries(seen.map((part) => [part, { condition: "good", note: null }]));
      return { ...inspect(), parts: { ...parts, "drive-gear": { condition: gear, note: null } } } as SheetEntry;
    };
    const closed = (gear: string) => benchFindings(job, sheetOf({ inspect: outside(gear) }), settings);
    expect(closed("good")).toMatchObject({ opened: false, engineDebris: "unlikely", work: "slip-check" });
    expect(closed("worn")).toMatchObject({ opened: false, engineDebris: "unlikely", work: "full-rebuild" });
    expect(closed("broken")).toMatchObject({ opened: false, engineDebris: "likely", work: "stop-riding" });
  });

  it("what a click wrench says is no evidence", () => {
    const click: SheetEntry = { ...all["as-found-slip"], readings: [20, 20, 20], tool: { ...tool, kind: "click" } };
    expect(benchFindings(job, sheetOf({ "as-found-slip": click }), settings).work).toBe("slip-check");
    const real: SheetEntry = { ...click, tool };
    expect(benchFindings(job, sheetOf({ "as-found-slip": real }), settings).work).toBe("stop-riding");
  });
});
