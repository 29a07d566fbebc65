import { describe, expect, it } from "vitest";
import { adviseNut, adviseShims, type SettingTried } from "#shared/slip/bench-advice.ts";
import { nextNut } from "#shared/slip/next-nut.ts";
import { nextShims } from "#shared/slip/next-shims.ts";
import { sayNut, sayShims } from "#shared/slip/travel-words.ts";
import { aTool } from "#tests/slip/slip-readings.ts";
import { aUnit, readAtNut, readAtShims, SET_NUT, SHIM_STACK } from "#tests/slip/true-clutch.ts";

const turned = (nutDegrees: number): SettingTried => ({
  nutDegrees,
  shimMm: null,
  slip: readAtNut(nutDegrees).slipLbfFt,
});
const unit = aUnit({ contactMm: 0.5 });
const shimmed = (shimMm: number): SettingTried => ({
  nutDegrees: null,
  shimMm,
  slip: readAtShims(shimMm, unit).slipLbfFt,
});

const ask = (tries: readonly SettingTried[], targetLbfFt = 16.5) => ({
  tries,
  tool: aTool({ resolution: 0 }),
  targetLbfFt,
  coverage: 0.95,
});

describe("adviseNut", () => {
  it("asks for two places first", () => {
    for (const tries of [[], [turned(180)], [turned(180), turned(180)], [shimmed(1), shimmed(1.2)]]) {
      const advice = adviseNut(SET_NUT, ask(tries));
      expect(advice.nut).toBeNull();
      expect(advice.says).toContain("Two readings at two places");
    }
  });

  it("works on the newest reading and the newest before it from another place", () => {
    const tries = [turned(90), turned(180), turned(270), turned(270)];
    const expected = nextNut(SET_NUT, [readAtNut(180), readAtNut(270)], 16.5, 0.95);
    const advice = adviseNut(SET_NUT, ask(tries));
    expect(advice.nut).toEqual(expected.ok && expected.value);
    expect(advice.says).toBe(sayNut(expected));
  });

  it("counts the step of the tool and the spread of a try, not the tool's accuracy, which shifts all alike", () => {
    const tries = [turned(180), turned(270)];
    const width = (changes: Parameters<typeof aTool>[0]) => {
      const { nut } = adviseNut(SET_NUT, { ...ask(tries), tool: aTool({ resolution: 0, ...changes }) });
      return nut!.turnTo.high - nut!.turnTo.low;
    };
    expect(width({ accuracyPercent: 6 })).toBe(width({ accuracyPercent: 1 }));
    expect(width({ resolution: 1 })).toBeGreaterThan(1.5 * width({}));
  });

  it("hears that a place was come to by loosening", () => {
    const { nut } = adviseNut(SET_NUT, ask([turned(180), { ...turned(270), loosened: true }]));
    expect(nut!.turnTo.value).toBeLessThan(adviseNut(SET_NUT, ask([turned(180), turned(270)])).nut!.turnTo.value);
  });
});

describe("adviseShims", () => {
  it("works on shims alone", () => {
    const expected = nextShims(SHIM_STACK, [readAtShims(1.1, unit), readAtShims(1.3, unit)], 14, 0.95);
    const advice = adviseShims(SHIM_STACK, ask([shimmed(1.1), turned(90), shimmed(1.3)], 14));
    expect(advice.shims).toEqual(expected.ok && expected.value);
    expect(advice.says).toBe(sayShims(expected));
    expect(adviseShims(SHIM_STACK, ask([shimmed(1)])).says).toContain("Two readings");
  });
});
