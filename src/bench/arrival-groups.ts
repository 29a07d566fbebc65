import { isUrgent } from "#shared/calendar/bench-job.ts";
import { weekdayIndex } from "#shared/calendar/working-days.ts";
import type { Arrival } from "#shared/shop/booking.ts";
import { dayNumber } from "#shared/units/calendar-date.ts";

/** The parts of the arrivals list, in the order in which they are shown. */
export const ARRIVAL_GROUPS = ["urgent", "this-week", "next-week", "later", "slot-passed", "cancelled"] as const;
export type ArrivalGroup = (typeof ARRIVAL_GROUPS)[number];

const WEEK_DAYS = 7;

/**
 * Arrivals by group, each group in the order given; empty groups are left out. Weeks start on Monday.
 * @param today the shop's calendar date
 */
export function groupArrivals(
  arrivals: readonly Arrival[],
  today: string,
): readonly { readonly group: ArrivalGroup; readonly arrivals: readonly Arrival[] }[] {
  return ARRIVAL_GROUPS.map((group) => ({
    group,
    arrivals: arrivals.filter((arrival) => groupOf(arrival, today) === group),
  })).filter(({ arrivals: some }) => some.length > 0);
}

function groupOf({ state, verdict, time }: Arrival, today: string): ArrivalGroup {
  if (state === "cancelled") return "cancelled";
  if (time.date < today) return "slot-passed";
  if (isUrgent(verdict)) return "urgent";
  const day = dayNumber(today);
  const nextMonday = day - weekdayIndex(day) + WEEK_DAYS;
  if (dayNumber(time.date) < nextMonday) return "this-week";
  return dayNumber(time.date) < nextMonday + WEEK_DAYS ? "next-week" : "later";
}
