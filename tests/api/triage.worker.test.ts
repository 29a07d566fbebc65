import { beforeAll, expect, it } from "vitest";
import { SlipPlanAnswer, SlipReadingAnswer, TriageAnswer } from "#src/api/triage-bodies.ts";
import { nothingKnown, someAnswers } from "#tests/api/an-owner.ts";
import { type Ask, ask, fieldsOf, jsonOf, problemOf, WARM_UP } from "#tests/api/ask.ts";

beforeAll(...WARM_UP);

const ON_DATE = "2027-05-01";
const triage = (body: object, more: Ask = {}) => ask("/api/triage", { body: { onDate: ON_DATE, ...body }, ...more });

/** As the design writes it, with one value chosen wherever it lists several. */
const WRITTEN = {
  onDate: "2027-05-01",
  unitFamily: "shim-stack",
  builtYear: 2016,
  engineHours: 212,
  riding: "easy",
  mods: { engine: false, charger: false, boostPsi: null, changedSinceSlip: false },
  lastRebuild: { when: "known", date: "2025-04-01", engineHours: 120 },
  lastSlipSet: { when: "known", date: "2026-04-01", engineHours: 160 },
  washers: "metal",
  symptoms: [
    "metal-in-oil",
    "grinding",
    "sudden-boost-loss",
    "gradual-boost-loss",
    "impeller-wobble",
    "whine",
    "burnt-smell",
    "limp-mode",
    "oil-in-intake",
  ],
};

it("judges the written example, with every reason in words and its source", async () => {
  const answer = TriageAnswer.parse(await jsonOf(ask("/api/triage", { body: WRITTEN }), 200));
  expect(answer).toMatchObject({ verdict: "stop-riding", engineDebris: "likely", wouldChange: [] });
  expect(answer.reasons.length).toBeGreaterThan(4);
  expect(answer.due).toEqual({ kind: "full-rebuild", by: "2027-04-01", atEngineHours: 260 });
});

it("judges as on the date that is given, whatever the clock says", async () => {
  const judged = async (onDate: string) => (await jsonOf(triage({ ...WRITTEN, symptoms: [], onDate }), 200)).verdict;
  expect([await judged("2027-03-31"), await judged("2027-04-01")]).toEqual(["not-due", "full-rebuild"]);
});

it("tells which single answer would change the verdict", async () => {
  const answer = TriageAnswer.parse(await jsonOf(triage(someAnswers({ builtYear: 2024, lastRebuild: UNKNOWN })), 200));
  expect(answer.verdict).toBe("full-rebuild");
  expect(answer.wouldChange).toContainEqual({ answer: "lastRebuild", to: "not-due" });
});

const UNKNOWN = { when: "unknown", date: null, engineHours: null };

it("takes null for not sure everywhere, and answers the worst", async () => {
  expect(await jsonOf(triage(nothingKnown()), 200)).toMatchObject({ verdict: "full-rebuild" });
});

it("reads a missing changedSinceSlip as no", async () => {
  const { changedSinceSlip: _, ...mods } = someAnswers().mods;
  expect(await jsonOf(triage(someAnswers({ mods })), 200)).toMatchObject({ verdict: "not-due" });
});

it.each([
  [{ onDate: undefined }, ["onDate"]],
  [{ onDate: "2027-02-29" }, ["onDate"]],
  [{ engineHours: "212" }, ["engineHours"]],
  [{ riding: "wild" }, ["riding"]],
  [{ symptoms: ["whine", "rattle"] }, ["symptoms.1"]],
  [{ mods: { engine: 1, charger: false } }, ["mods.engine"]],
  [{ lastRebuild: { when: "known", date: "2025-4-1", engineHours: 20 } }, ["lastRebuild.date"]],
  [{ lastRebuild: { when: "known", date: null, engineHours: 51 } }, ["lastRebuild.engineHours"]],
  [{ lastSlipSet: { when: "known", date: "2027-05-02", engineHours: null } }, ["lastSlipSet.date"]],
  [{ lastRebuild: { when: "never", date: "2025-04-01", engineHours: null } }, ["lastRebuild.date"]],
  [{ builtYear: 2029 }, ["builtYear"]],
  [{ colour: "red" }, ["colour"]],
  [{ mods: { engine: false, charger: false, colour: "red" } }, ["mods.colour"]],
  [{ riding: 1, engineHours: -1, lastRebuild: { when: "once" } }, ["engineHours", "riding", "lastRebuild.when"]],
  [
    { engineHours: 10, lastSlipSet: { when: "known", date: "2028-01-01", engineHours: 11 } },
    ["lastRebuild.engineHours", "lastSlipSet.engineHours", "lastSlipSet.date"],
  ],
  [
    {
      riding: 1,
      builtYear: 2029,
      engineHours: 10,
      lastRebuild: { when: "known", date: "2027-05-02", engineHours: 20, oil: 1 },
      colour: "red",
    },
    ["riding", "lastRebuild.oil", "colour", "lastRebuild.engineHours", "builtYear", "lastRebuild.date"],
  ],
  [
    { lastRebuild: { when: "never", date: "2025-04-01", engineHours: "x" } },
    ["lastRebuild.engineHours", "lastRebuild.date"],
  ],
  [{ lastRebuild: null, lastSlipSet: { when: "known", date: "2028-01-01" } }, ["lastRebuild", "lastSlipSet.date"]],
])("refuses %j and names the field", async (change, fields) => {
  expect(await fieldsOf(triage(someAnswers(change)))).toEqual(fields);
});

it("says what each field accepts", async () => {
  const { errors } = await problemOf(triage(someAnswers({ unitFamily: "other", onDate: 5, builtYear: "old" })), 422);
  expect(errors).toEqual([
    { field: "onDate", accepted: "a date that exists, YYYY-MM-DD" },
    { field: "unitFamily", accepted: 'one of "shim-stack", "set-nut", "unknown"' },
    { field: "builtYear", accepted: "a whole number from 1985 to 2100 or null" },
  ]);
});

it("takes next year's craft and no later ones", async () => {
  await jsonOf(triage(someAnswers({ builtYear: 2028 })), 200);
});

it("wants JSON", async () => {
  await problemOf(triage({}, { headers: { "content-type": "text/plain" } }), 415);
  await problemOf(ask("/api/triage", { method: "POST" }), 415);
  await problemOf(ask("/api/triage", { body: "{" }), 400);
  expect(await fieldsOf(ask("/api/triage", { body: "[]" }))).toEqual(["body"]);
});

it("plans the slip", async () => {
  const body = { unitFamily: "set-nut", riding: "hard", mods: { engine: true, charger: true, boostPsi: 20 } };
  const plan = SlipPlanAnswer.parse(await jsonOf(ask("/api/slip-plan", { body }), 200));
  expect(plan).toMatchObject({
    target: { value: 18, unit: "lbf.ft" },
    targetSI: { value: 24.405, unit: "N.m" },
    band: { low: 17.5, high: 18.1 },
    setBeforeLock: { value: 16.5, unit: "lbf.ft" },
  });
  expect(await fieldsOf(ask("/api/slip-plan", { body: { ...body, builtYear: 2016 } }))).toEqual(["builtYear"]);
});

it("decides on readings of the slip", async () => {
  const tool = { kind: "electronic", accuracyPercent: 1, resolution: 0.05 };
  const body = { target: 18, band: { low: 17.5, high: 18.1 }, readings: [17.8, 17.9, 17.8], tool };
  const reading = SlipReadingAnswer.parse(await jsonOf(ask("/api/slip-reading", { body }), 200));
  expect(reading.decision).toBe("accept");
  expect(reading.mean).toBeCloseTo(17.8333, 4);
  const short = { ...body, readings: [17.8, 17.9], tool: { ...tool, kind: "cheap" } };
  expect(await fieldsOf(ask("/api/slip-reading", { body: short }))).toEqual(["readings", "tool.kind"]);
});
