import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type CalendarSettings, WEEKDAYS } from "#shared/calendar/calendar-settings.ts";
import { dateOfDay, dayNumber } from "#shared/units/calendar-date.ts";

/** How far any search through the days goes, so that a shop that never opens is an answer and not a hang. */
export const FURTHEST_DAYS = 365;

/** 1970-01-01 was a Thursday, three days after a Monday. */
const DAYS_AFTER_MONDAY = 3;

/** A working day is one with an opening and no closure. */
export const isOpenDay = (date: string, settings: CalendarSettings): boolean => openDays(settings)(dayNumber(date));

/**
 * The day that lies `count` working days after a date. From a closed day the count starts at the next open one.
 * @example plusWorkingDays("2027-05-01", 4, DEFAULT_CALENDAR) // 2027-05-07: Saturday counts from Monday the 3rd
 */
export const plusWorkingDays = (date: string, count: number, settings: CalendarSettings) =>
  walk(date, count, 1, settings);

/**
 * The last day from which `count` working days lead to the date or before it.
 * @example minusWorkingDays("2027-05-07", 4, DEFAULT_CALENDAR) // 2027-05-03
 */
export const minusWorkingDays = (date: string, count: number, settings: CalendarSettings) =>
  walk(date, count, -1, settings);

/** Tells open days by their number since 1970-01-01; settings are read once, so a year's search stays quick. */
export function openDays(settings: CalendarSettings): (day: number) => boolean {
  const worked = WEEKDAYS.map((weekday) => settings.weekly[weekday].length > 0);
  const closures = settings.closures.map(({ from, to }) => ({ first: dayNumber(from), last: dayNumber(to) }));
  return (day) =>
    worked[weekdayIndex(day)] === true && !closures.some(({ first, last }) => first <= day && day <= last);
}

/** Counts the open days after one day, up to and with another. */
export function openDaysBetween(settings: CalendarSettings): (one: number, other: number) => number {
  const isOpen = openDays(settings);
  return (one, other) => {
    let count = 0;
    for (let day = one + 1; day <= other; day += 1) if (isOpen(day)) count += 1;
    return count;
  };
}

/** 0 is Monday. @example weekdayIndex(0) // 3, a Thursday */
export const weekdayIndex = (day: number): number => (((day + DAYS_AFTER_MONDAY) % 7) + 7) % 7;

function walk(date: string, count: number, step: 1 | -1, settings: CalendarSettings): Outcome<string, "no-open-day"> {
  const isOpen = openDays(settings);
  const start = dayNumber(date);
  let left = count;
  for (let day = start; Math.abs(day - start) <= FURTHEST_DAYS; day += step) {
    if (!isOpen(day)) continue;
    if (left === 0) return accept(dateOfDay(day));
    left -= 1;
  }
  return refuse("no-open-day");
}
