import { expect, it } from "vitest";
import { SYMPTOMS, type Symptom } from "#shared/craft/vocabulary.ts";
import { SUSPECT_RULES, suspectsFor } from "#shared/triage/suspects.ts";

const idsFor = (symptoms: readonly Symptom[], mayBeCeramic = false) =>
  suspectsFor(symptoms, mayBeCeramic).map(({ id }) => id);

/** Common practice, no published source, but for the last four rows: default of this project. */
const CASES: readonly (readonly [symptoms: readonly Symptom[], suspects: readonly string[], because: string])[] = [
  [["sudden-boost-loss"], ["drive-gear", "slip-too-high", "friction-washer"], "gear, shaft or washer broke at once"],
  [["metal-in-oil"], ["drive-gear", "needle-bearings", "friction-washer"], "these three shed metal into the oil"],
  [["grinding"], ["drive-gear", "needle-bearings", "ball-bearing"], "teeth, needles and a broken cage are heard"],
  [["impeller-wobble"], ["ball-bearing"], "the shaft runs in two ball bearings"],
  [["gradual-boost-loss"], ["washers-worn"], "worn washers let the slip fall slowly"],
  [["burnt-smell"], ["clutch-runs-hot"], "a clutch that slips runs hot"],
  [["whine"], ["worn-bearing-or-gear"], "bearings and gear whine as they wear"],
  [["oil-in-intake"], ["shaft-seal"], "oil comes past the shaft"],
  [["limp-mode"], ["outside-the-charger"], "limp mode has many causes"],
];

it.each(CASES)("%j points to %j: %s", (symptoms, suspects) => {
  expect(idsFor(symptoms)).toEqual(suspects);
});

it("suspects a broken washer where boost fades and the washers may be ceramic, and only then", () => {
  expect(idsFor(["gradual-boost-loss"], true)).toEqual(["friction-washer", "washers-worn"]);
  expect(idsFor(["gradual-boost-loss"], false)).not.toContain("friction-washer");
});

it("names every symptom that points to a failure, and no other", () => {
  const [gear] = suspectsFor(["whine", "grinding", "metal-in-oil"], false);
  expect(gear).toMatchObject({ id: "drive-gear", pointedToBy: ["grinding", "metal-in-oil"] });
});

it("suspects nothing where nothing was noticed", () => {
  expect(suspectsFor([], true)).toEqual([]);
});

it("has no symptom that points nowhere and no failure that nothing points to", () => {
  for (const symptom of SYMPTOMS) expect(idsFor([symptom])).not.toEqual([]);
  expect(idsFor(SYMPTOMS)).toEqual(SUSPECT_RULES.map(({ id }) => id));
});
