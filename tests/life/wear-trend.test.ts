import tOracle from "@stdlib/stats-base-dists-t-quantile";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MeasuredSlip, type SlipPeriod, wearTrend } from "#shared/life/wear-trend.ts";
import { NOINT1, NOINT2 } from "#tests/measurement/certified-fits.ts";

const slip = (lbfFt: number, uncertainty = 0.1): MeasuredSlip => ({ lbfFt, uncertainty });
const aPeriod = (changes: Partial<SlipPeriod> = {}): SlipPeriod => ({
  hours: 100,
  left: slip(13),
  found: slip(12),
  ...changes,
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const slips = fc.record({ lbfFt: number(8, 20), uncertainty: number(0.02, 0.4) });
const periods = fc.array(fc.record({ hours: number(1, 300), left: slips, found: slips }), {
  minLength: 1,
  maxLength: 8,
});

describe("wearTrend", () => {
  it("works one period out as on paper", () => {
    // 1 lbf·ft in 100 h is 0.1 in 10 h; u = √(0.1² + 0.1²)/10 = 0.014142; 1.959964 times that is 0.027718.
    const trend = wearTrend([aPeriod()], slip(13), 12, 0.95);
    expect(trend.lostPerTenHours?.value).toBeCloseTo(0.1, 12);
    expect(trend.lostPerTenHours?.low).toBeCloseTo(0.1 - 0.027718, 5);
    expect(trend.lostPerTenHours?.high).toBeCloseTo(0.1 + 0.027718, 5);
    // From 13 down to 12 at 0.01 an hour; at the edges (1 ∓ 0.195996) over 0.0127718 and 0.0072282 an hour.
    expect(trend.hoursToLimit?.value).toBeCloseTo(100, 9);
    expect(trend.hoursToLimit?.low).toBeCloseTo(0.8040036 / 0.0127718, 1);
    expect(trend.hoursToLimit?.high).toBeCloseTo(1.1959964 / 0.0072282, 1);
    expect(trend).toMatchObject({ periods: 1, reason: null });
  });

  // The line through the origin is certified by NIST StRD; the hours play its x and the loss its y.
  it.each([
    ["NoInt1", NOINT1],
    ["NoInt2", NOINT2],
  ])("agrees over several periods with NIST StRD %s, and with Student's t for its interval", (_, set) => {
    const trend = wearTrend(
      set.columns[0]!.map((hours, index) => ({
        hours,
        left: slip(200, 1e-9),
        found: slip(200 - set.observed[index]!, 1e-9),
      })),
      slip(200, 1e-9),
      0,
      0.95,
    );
    const half = tOracle(0.975, set.observed.length - 1) * set.standardErrors[0]! * 10;
    expect(trend.lostPerTenHours?.value).toBeCloseTo(set.coefficients[0]! * 10, 9);
    expect(trend.lostPerTenHours?.low).toBeCloseTo(set.coefficients[0]! * 10 - half, 6);
    expect(trend.lostPerTenHours?.high).toBeCloseTo(set.coefficients[0]! * 10 + half, 6);
  });

  it("rests the interval on the readings' own uncertainty where the periods agree by luck", () => {
    const lucky = [aPeriod(), aPeriod({ hours: 50, found: slip(12.5) })];
    const width = (trend: ReturnType<typeof wearTrend>) => trend.lostPerTenHours!.high - trend.lostPerTenHours!.low;
    // √((100² + 50²)·0.02)/(100² + 50²)·10, times 1.959964, both ways
    expect(width(wearTrend(lucky, slip(13), 12, 0.95))).toBeCloseTo(
      (2 * 1.959964 * 10 * Math.sqrt(0.02)) / Math.sqrt(12_500),
      6,
    );
  });

  it("says why there are no hours", () => {
    expect(wearTrend([], slip(13), 12, 0.95)).toEqual({
      lostPerTenHours: null,
      periods: 0,
      hoursToLimit: null,
      reason: "no-hours",
    });
    expect(wearTrend([aPeriod({ hours: 0 })], slip(13), 12, 0.95).reason).toBe("no-hours");
    const rising = wearTrend([aPeriod({ found: slip(13.2) })], slip(13), 12, 0.95);
    expect(rising).toMatchObject({ hoursToLimit: null, reason: "slip-does-not-fall", periods: 1 });
    expect(rising.lostPerTenHours?.value).toBeLessThan(0);
    expect(wearTrend([aPeriod({ found: slip(13) })], slip(13), 12, 0.95).reason).toBe("slip-does-not-fall");
  });

  it("leaves the end open where the slip may not fall at all", () => {
    const { hoursToLimit } = wearTrend([aPeriod({ found: slip(12.9) })], slip(13), 12, 0.95);
    expect(hoursToLimit?.value).toBeCloseTo(1000, 6);
    expect(hoursToLimit?.high).toBeNull();
  });

  it("never gives less than no hours, not even under the limit", () => {
    expect(wearTrend([aPeriod()], slip(11), 12, 0.95).hoursToLimit).toEqual({ value: 0, low: 0, high: 0 });
    fc.assert(
      fc.property(periods, slips, number(5, 25), (some, now, limit) => {
        const { hoursToLimit, reason } = wearTrend(some, now, limit, 0.95);
        expect(hoursToLimit === null).toBe(reason !== null);
        if (hoursToLimit === null) return;
        expect(hoursToLimit.low).toBeGreaterThanOrEqual(0);
        expect(hoursToLimit.value).toBeGreaterThanOrEqual(hoursToLimit.low);
        expect(hoursToLimit.high ?? Infinity).toBeGreaterThanOrEqual(hoursToLimit.value);
      }),
    );
  });

  it("gets no longer as the limit comes nearer or the slip is lost faster", () => {
    fc.assert(
      fc.property(periods, slips, number(5, 25), number(0, 5), number(0, 3), (some, now, limit, nearer, more) => {
        const hours = (from: readonly SlipPeriod[], to: number) => wearTrend(from, now, to, 0.95).hoursToLimit?.value;
        const here = hours(some, limit);
        fc.pre(here !== undefined);
        expect(hours(some, limit + nearer)!).toBeLessThanOrEqual(here! * (1 + 1e-12));
        const faster = some.map((it) => ({ ...it, found: slip(it.found.lbfFt - more, it.found.uncertainty) }));
        expect(hours(faster, limit)!).toBeLessThanOrEqual(here! * (1 + 1e-12));
      }),
    );
  });

  it("does not depend on the order of the periods", () => {
    fc.assert(
      fc.property(periods, slips, (some, now) => {
        const [one, other] = [some, [...some].reverse()].map((it) => wearTrend(it, now, 10, 0.95).lostPerTenHours!);
        expect(other!.value).toBeCloseTo(one!.value, 9);
        expect(other!.high).toBeCloseTo(one!.high, 7);
      }),
    );
  });
});
