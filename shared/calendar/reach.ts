import { accept, type Outcome } from "#shared/basics/outcome.ts";
import { benchNeed } from "#shared/calendar/bench-job.ts";
import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { FURTHEST_DAYS, plusWorkingDays } from "#shared/calendar/working-days.ts";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { plusDays } from "#shared/units/calendar-date.ts";

/** The days on which a unit can be worked on, both inclusive. */
export type Reach = { readonly firstDay: string; readonly lastDay: string };

/**
 * The unit is posted today in the shop's zone and stands on the bench once the lead has passed.
 * @param unitHere the shop has it already, and it may stand there today
 */
export function reachOf(
  settings: CalendarSettings,
  verdict: Verdict,
  now: number,
  unitHere = false,
): Outcome<Reach, "no-open-day"> {
  const today = wallOf(settings.zone, now).date;
  const lead = unitHere ? 0 : benchNeed(verdict, settings).leadWorkingDays;
  const arrival = plusWorkingDays(today, lead, settings);
  if (!arrival.ok) return arrival;
  return accept({ firstDay: arrival.value, lastDay: plusDays(today, FURTHEST_DAYS) });
}
