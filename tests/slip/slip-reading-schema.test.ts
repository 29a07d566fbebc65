import { describe, expect, it } from "vitest";
import { SlipReadingSchema } from "#shared/slip/slip-reading-schema.ts";
import { aReading, aTool } from "#tests/slip/slip-readings.ts";

const refusedFields = (body: unknown) => {
  const parsed = SlipReadingSchema.safeParse(body);
  return parsed.success ? [] : parsed.error.issues.map(({ path }) => path.join("."));
};

describe("the body of a slip reading", () => {
  it("is accepted as it is, with and without a certificate", () => {
    expect(SlipReadingSchema.parse(aReading())).toEqual(aReading());
    const certified = aReading({ tool: aTool({ k: 2 }) });
    expect(SlipReadingSchema.parse(certified)).toEqual(certified);
  });

  it.each<[unknown, string, string]>([
    [aReading({ readings: [17.8, 17.9] }), "readings", "two readings say too little of the spread"],
    [aReading({ readings: Array.from({ length: 51 }, () => 18) }), "readings", "a list has an end"],
    [aReading({ readings: [17.8, 0, 17.9] }), "readings.1", "a gear that slips resists"],
    [aReading({ readings: [17.8, Number.NaN, 17.9] }), "readings.1", "a reading is a number"],
    [aReading({ readings: [17.8, 1790, 17.9] }), "readings.1", "a decimal point slipped"],
    [aReading({ band: { low: 18, high: 18 } }), "band.high", "a band needs a width"],
    [aReading({ band: { low: 18, high: 17 } }), "band.high", "a band must not run backwards"],
    [aReading({ target: 0 }), "target", "no slip is no target"],
    [aReading({ tool: aTool({ accuracyPercent: 0 }) }), "tool.accuracyPercent", "no tool is perfect"],
    [aReading({ tool: aTool({ accuracyPercent: 21 }) }), "tool.accuracyPercent", "that is no torque tool"],
    [aReading({ tool: aTool({ resolution: -0.1 }) }), "tool.resolution", "a step has no sign"],
    [aReading({ tool: aTool({ k: 0.5 }) }), "tool.k", "a certificate's k is at least 1"],
    [{ ...aReading(), tool: { ...aTool(), kind: "laser" } }, "tool.kind", "it is not one of the kinds"],
    [{ ...aReading(), unit: "N.m" }, "", "an unknown field may mean another unit"],
  ])("is refused: %j names %s, because %s", (body, field) => {
    expect(refusedFields(body)).toContain(field);
  });
});
