import type { SlipChart } from "#shared/job/slip-chart.ts";
import type { WearTrend } from "#shared/life/wear-trend.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** What is said around the drawing of a unit's slip. */
export const CHART_WORDS = {
  found: "Found, lbf·ft",
  left: "Left, lbf·ft",
  says: (services: number) =>
    `Slip in lbf·ft over engine hours, ${services === 1 ? "1 service" : `${services} services`}. The table below says the same.`,
  legend: ({ wear, forecast, due }: SlipChart) =>
    [
      "Slip, lbf·ft. Ring: as found. Dot: as left. Bars: expanded uncertainty. Shaded: the band it was set for.",
      ...(wear.length > 0 ? ["Dashed: how it wore."] : []),
      ...(forecast === null ? [] : ["Dotted: how it may wear."]),
      ...(due === null ? [] : ["Upright line: next check."]),
    ].join(" "),
} as const;

/** How the slip falls, in a sentence or two; null where nothing tells. */
export function trendText(trend: WearTrend | null): string | null {
  if (trend?.lostPerTenHours == null) return null;
  const { lostPerTenHours, hoursToLimit } = trend;
  if (hoursToLimit === null) return "So far the slip does not fall with the hours.";
  const lost = `The slip falls by about ${shown(lostPerTenHours.value)} lbf·ft in 10 engine hours (${shown(lostPerTenHours.low)} to ${shown(lostPerTenHours.high)}).`;
  const until = hoursToLimit.high === null ? "or far more" : `to ${Math.round(hoursToLimit.high)}`;
  return `${lost} At that pace it reaches the lower limit in about ${Math.round(hoursToLimit.value)} hours (${Math.round(hoursToLimit.low)} ${until}).`;
}

const shown = (lbfFt: number): string => roundTo(lbfFt, 2).toFixed(2);
