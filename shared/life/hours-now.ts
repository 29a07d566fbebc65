import type { Answers } from "#shared/craft/vocabulary.ts";
import { exactly, type HoursSpan } from "#shared/life/hours-span.ts";
import { plusDays, yearsBetween } from "#shared/units/calendar-date.ts";

/** Most hours that an owner is taken to have ridden since a date. */
export const riddenSince = (date: string, onDate: string, hoursPerYear: number): number =>
  Math.max(0, yearsBetween(date, onDate) * hoursPerYear);

/** The latest day from which on so many hours can have been ridden. @example latestDayFor(150, "2027-05-01", 150) // "2026-04-30" */
export const latestDayFor = (hours: number, onDate: string, hoursPerYear: number): string =>
  plusDays(onDate, -Math.ceil((hours / hoursPerYear) * DAYS_PER_YEAR));

const DAYS_PER_YEAR = 365.25;

/**
 * The engine's hours. Where they are not known: at least what they were at a service, and from the last date at which
 * they are known (0 when new) any number up to `hoursPerYear` for each year.
 */
export function hoursNow(
  { engineHours, builtYear, lastRebuild, lastSlipSet }: Answers,
  onDate: string,
  hoursPerYear: number,
): HoursSpan {
  if (engineHours !== null) return exactly(engineHours);
  const least = Math.max(lastRebuild.engineHours ?? 0, lastSlipSet.engineHours ?? 0);
  let date = builtYear === null ? null : `${builtYear}-01-01`;
  let hoursThen = 0;
  for (const service of [lastRebuild, lastSlipSet]) {
    if (service.date === null || service.engineHours === null || (date !== null && service.date < date)) continue;
    date = service.date;
    hoursThen = service.engineHours;
  }
  if (date === null) return { least, most: Infinity };
  const ridden = riddenSince(date, onDate, hoursPerYear);
  // More hours at a service than that pace allows: this owner rides faster, so the pace is counted from those hours.
  return { least, most: hoursThen + ridden < least ? least + ridden : hoursThen + ridden };
}
