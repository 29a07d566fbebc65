import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { minusWorkingDays } from "#shared/calendar/working-days.ts";
import { instantOf, wallOf } from "#shared/calendar/zone-clock.ts";

/**
 * Until when (epoch milliseconds) the owner may move or cancel: the same time on the wall, some working days before.
 * Where the shop has no open day before the slot any more, nobody there is left to plan, and it is the start itself.
 */
export function changeableUntil(startsAt: number, settings: CalendarSettings): number {
  const { date, minuteOfDay } = wallOf(settings.zone, startsAt);
  const lastDay = minusWorkingDays(date, settings.changeUntilWorkingDays, settings);
  return lastDay.ok ? instantOf(settings.zone, lastDay.value, minuteOfDay) : startsAt;
}

/** May the owner still move or cancel? The last millisecond counts. */
export const mayChange = (startsAt: number, settings: CalendarSettings, now: number): boolean =>
  now <= changeableUntil(startsAt, settings);
