import { describe, expect, it } from "vitest";
import { refuse } from "#shared/basics/outcome.ts";
import { nextNut } from "#shared/slip/next-nut.ts";
import { nextShims } from "#shared/slip/next-shims.ts";
import { sayNut, sayShims } from "#shared/slip/travel-words.ts";
import { aUnit, readAtNut, readAtShims, SET_NUT, SHIM_STACK } from "#tests/slip/true-clutch.ts";

const REASONS = ["same-place", "does-not-fit", "flat", "past-top", "out-of-reach"] as const;

describe("what is said of the nut and the shims", () => {
  it("gives where to stop, where the target is expected with its interval, and where never to go", () => {
    const says = sayNut(nextNut(SET_NUT, [readAtNut(180), readAtNut(270)], 16.5, 0.95));
    expect(says).toMatch(/^Turn to 35\d° first and read[.]/);
    expect(says).toContain("expected at 360°, between 35");
    expect(says).toMatch(/Never past 40\d°: tightened home the nut locks the gear solid/);
  });

  it("says to back off and come up again where the nut is too far in", () => {
    const says = sayNut(nextNut(SET_NUT, [readAtNut(300), readAtNut(380)], 16.5, 0.95));
    expect(says).toMatch(/^Back off to 26\d°, come up to 35\d° and read[.]/);
  });

  it("rounds a limit to the safe side", () => {
    expect(sayNut(refuse({ reason: "out-of-reach", neverPastDegrees: 399.9 }))).toContain("Never past 399°");
  });

  it("names no place beyond the limit that it names", () => {
    for (let target = 14; target < 18.5; target += 0.05) {
      const says = sayNut(nextNut(SET_NUT, [readAtNut(180), readAtNut(270)], target, 0.95));
      const [, limit = "0"] = /Never past (\d+)°/.exec(says) ?? [];
      const named = [...says.matchAll(/(\d+)°(?! change)/g)].map(([, degrees]) => Number(degrees));
      expect(Math.max(...named)).toBe(Number(limit));
    }
    for (let target = 11; target < 15; target += 0.05) {
      const unit = aUnit({ contactMm: 0.5 });
      const says = sayShims(nextShims(SHIM_STACK, [readAtShims(1.1, unit), readAtShims(1.3, unit)], target, 0.95));
      const [, high = "0"] = /between [\d.]+ and ([\d.]+) mm/.exec(says) ?? [];
      const [, limit = "0"] = /Never more than ([\d.]+) mm/.exec(says) ?? [];
      expect(Number(high)).toBeLessThanOrEqual(Number(limit));
    }
  });

  it("says how many shims, and how many more or less", () => {
    const unit = aUnit({ contactMm: 0.5 });
    const readings = [readAtShims(1.1, unit), readAtShims(1.3, unit)] as const;
    expect(sayShims(nextShims(SHIM_STACK, readings, 14.6, 0.95))).toMatch(
      /^Put in 1[.]35 mm of shims in all [(]0[.]05 mm more[)]/,
    );
    expect(sayShims(nextShims(SHIM_STACK, readings, 12, 0.95))).toMatch(/mm less[)] and read[.]/);
    expect(sayShims(nextShims(SHIM_STACK, readings, 13.6, 0.95))).toContain("(as now)");
  });

  it("has a sentence of its own for each reason that it has no advice", () => {
    const sentences = REASONS.map((reason) => sayNut(refuse({ reason, neverPastDegrees: null })));
    expect(new Set(sentences).size).toBe(REASONS.length);
    expect(REASONS.map((reason) => sayShims(refuse({ reason, neverPastMm: null })))).toEqual(sentences);
    expect(sentences.join(" ")).not.toContain("Never past");
  });
});
