/**
 * Arithmetic on calendar dates written as ISO 8601 text (`2027-05-01`), proleptic Gregorian, no time of day, no zone.
 * Only what the service clock needs; anything with a zone lives in `shared/calendar`.
 */
const DAY_MS = 86_400_000;
const MONTHS_PER_YEAR = 12;

/** Days since 1970-01-01. @example dayNumber("1970-01-02") // 1 */
export const dayNumber = (date: string): number => Date.parse(date) / DAY_MS;

/** @example dateOfDay(1) // "1970-01-02" */
export const dateOfDay = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** @example plusDays("2027-02-28", 1) // "2027-03-01" */
export const plusDays = (date: string, days: number): string => dateOfDay(dayNumber(date) + days);

/**
 * Month arithmetic that keeps to the end of a shorter month, as ISO 8601 durations are usually read.
 * @example plusMonths("2027-01-31", 1) // "2027-02-28"
 */
export function plusMonths(date: string, months: number): string {
  const monthsInAll = Number(date.slice(0, 4)) * MONTHS_PER_YEAR + Number(date.slice(5, 7)) - 1 + months;
  const year = Math.floor(monthsInAll / MONTHS_PER_YEAR);
  const month = monthsInAll - year * MONTHS_PER_YEAR + 1;
  const day = Math.min(Number(date.slice(8)), daysOfMonth(year, month));
  return `${year}-${twoDigits(month)}-${twoDigits(day)}`;
}

function daysOfMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

const twoDigits = (count: number): string => (count < 10 ? `0${count}` : String(count));

/** Days from one date to a later one; negative where it is earlier. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** A Julian year's days: the usual divisor where an age in years need not be exact to the day. */
const DAYS_PER_YEAR = 365.25;

/** Years from one date to another, as a decimal. @example yearsBetween("2026-01-01", "2027-01-01") // 0.9993… */
export const yearsBetween = (from: string, to: string): number => daysBetween(from, to) / DAYS_PER_YEAR;
