import { benchNeed } from "#shared/calendar/bench-job.ts";
import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { minusWorkingDays } from "#shared/calendar/working-days.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/**
 * The last day to post a unit so that it is there on its bench day. Where closures that were added later leave no open
 * day to count back to, it is the bench day itself: the latest that can be said.
 * @example postBy("2027-05-07", "full-rebuild", DEFAULT_CALENDAR) // "2027-05-03"
 */
export function postBy(benchDay: string, verdict: Verdict, settings: CalendarSettings): string {
  const lastDay = minusWorkingDays(benchDay, benchNeed(verdict, settings).leadWorkingDays, settings);
  return lastDay.ok ? lastDay.value : benchDay;
}
