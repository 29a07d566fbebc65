import { around, coverageFactor, type Estimate } from "#shared/measurement/estimate.ts";
import { leastSquares } from "#shared/measurement/least-squares.ts";
import { tQuantile } from "#shared/measurement/t-distribution.ts";

/** A slip with its standard uncertainty, both lbf·ft. */
export type MeasuredSlip = { readonly lbfFt: number; readonly uncertainty: number };

/** From one service to the next: how the slip was left, how it was found, and the engine hours between. */
export type SlipPeriod = { readonly hours: number; readonly left: MeasuredSlip; readonly found: MeasuredSlip };

/** How fast the slip falls, and how long it may go on. */
export type WearTrend = {
  /** Slip lost in 10 engine hours, lbf·ft; null where no hours passed. */
  readonly lostPerTenHours: Estimate | null;
  /** Periods that count. */
  readonly periods: number;
  /** Hours until the slip is at the lower limit; never negative. `high` is null where the slip may not fall at all. */
  readonly hoursToLimit: { readonly value: number; readonly low: number; readonly high: number | null } | null;
  /** Why there is no figure of hours. */
  readonly reason: "no-hours" | "slip-does-not-fall" | null;
};

const TEN_HOURS = 10;

/**
 * Slip lost over hours: of one period the difference of its two readings, of several the straight line through no loss
 * at no hours (least squares). The interval rests on the readings' own uncertainty or on the spread about the line with
 * Student's t, whichever is wider (JCGM 100:2008, 5.1.2 and G.3.2).
 * @param now slip that the unit is left at
 * @param lowerLimitLbfFt slip at which it is to be set again
 * @param coverage level of confidence of the intervals, 0 to 1
 * @example wearTrend([{ hours: 100, left: slip(13, 0.1), found: slip(12, 0.1) }], slip(13, 0.1), 12, 0.95)
 *   // lostPerTenHours 0.1 (0.072 to 0.128), hoursToLimit 100 (63 to 165)
 */
export function wearTrend(
  periods: readonly SlipPeriod[],
  now: MeasuredSlip,
  lowerLimitLbfFt: number,
  coverage: number,
): WearTrend {
  const counted = periods.filter(({ hours }) => hours > 0);
  if (counted.length === 0) return { lostPerTenHours: null, periods: 0, hoursToLimit: null, reason: "no-hours" };
  const perHour = lostPerHour(counted, coverage);
  const falls = perHour.value > 0;
  return {
    lostPerTenHours: {
      value: perHour.value * TEN_HOURS,
      low: perHour.low * TEN_HOURS,
      high: perHour.high * TEN_HOURS,
    },
    periods: counted.length,
    hoursToLimit: falls ? hoursTo(lowerLimitLbfFt, now, perHour, coverage) : null,
    reason: falls ? null : "slip-does-not-fall",
  };
}

function lostPerHour(periods: readonly SlipPeriod[], coverage: number): Estimate {
  const hours = periods.map((it) => it.hours);
  const lost = periods.map(({ left, found }) => left.lbfFt - found.lbfFt);
  const squares = hours.reduce((sum, it) => sum + it ** 2, 0);
  const value = hours.reduce((sum, it, index) => sum + it * (lost[index] ?? 0), 0) / squares;
  const own = Math.hypot(...periods.map((it) => it.hours * Math.hypot(it.left.uncertainty, it.found.uncertainty)));
  const fit = leastSquares([hours], lost);
  const bySpread = fit.ok ? tQuantile((1 + coverage) / 2, fit.value.dof) * (fit.value.standardErrors[0] ?? 0) : 0;
  return around(value, Math.max((coverageFactor(coverage) * own) / squares, bySpread));
}

/** The slowest loss from the highest slip and the fastest from the lowest: wider than both by chance would be. */
function hoursTo(limit: number, now: MeasuredSlip, perHour: Estimate, coverage: number) {
  const over = around(now.lbfFt - limit, coverageFactor(coverage) * now.uncertainty);
  const hours = (slip: number, rate: number) => Math.max(0, slip) / rate;
  return {
    value: hours(over.value, perHour.value),
    low: hours(over.low, perHour.high),
    high: perHour.low > 0 ? hours(over.high, perHour.low) : null,
  };
}
