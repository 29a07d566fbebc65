import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { IMPELLER_ALLOYS } from "#shared/slip/impeller-alloys.ts";
import { soakTally } from "#shared/slip/soak-tally.ts";

const soaks = fc.array(
  fc.record({
    celsius: fc.double({ min: 20, max: 240, noNaN: true }),
    hours: fc.double({ min: 0, max: 20, noNaN: true }),
  }),
  { maxLength: 6 },
);
const alloys = fc.constantFrom(...IMPELLER_ALLOYS);

describe("soakTally", () => {
  // M. Donovan and others, California Polytechnic State University, 2015: 6061-T6 kept its yield strength for 64 h at
  // 177 °C, 16 h at 199 °C, 4 h at 218 °C.
  it.each([
    [177, 64, 1],
    [199, 16, 1],
    [218, 4, 1],
    [150, 0.64, 0.01],
    [178, 1.6, 0.1],
    [219, 0.1, Number.POSITIVE_INFINITY],
    [219, 0, 0],
  ])("counts 6061-T6 at %d °C for %d h as %d of what it bears", (celsius, hours, share) => {
    expect(soakTally("6061-T6", [{ celsius, hours }]).shareUsed).toBeCloseTo(share, 12);
  });

  it("has no share for an alloy of which no trial is known", () => {
    expect(soakTally("7075-T6", [{ celsius: 100, hours: 1 }]).shareUsed).toBeNull();
  });

  it("counts hours over the ceiling apart, the ceiling itself not", () => {
    const both = [
      { celsius: 120, hours: 1 },
      { celsius: 121, hours: 2 },
    ];
    expect(soakTally("7075-T6", both)).toMatchObject({ hours: 3, hoursOverCeiling: 2, hottestC: 121 });
    expect(soakTally("6061-T6", both).hoursOverCeiling).toBe(0);
    expect(soakTally("6061-T6", [])).toEqual({ hours: 0, hoursOverCeiling: 0, hottestC: null, shareUsed: 0 });
  });

  it("adds up, and never goes back", () => {
    fc.assert(
      fc.property(alloys, soaks, soaks, (alloy, one, other) => {
        const [first, second, both] = [one, other, [...one, ...other]].map((some) => soakTally(alloy, some));
        expect(both!.hours).toBeCloseTo(first!.hours + second!.hours, 9);
        expect(both!.hoursOverCeiling).toBeCloseTo(first!.hoursOverCeiling + second!.hoursOverCeiling, 9);
        expect(both!.shareUsed ?? 0).toBeGreaterThanOrEqual(first!.shareUsed ?? 0);
      }),
    );
  });
});
