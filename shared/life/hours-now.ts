import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { exactly, type HoursSpan } from "#shared/life/hours-span.ts";
import { plusDays, yearsBetween } from "#shared/units/calendar-date.ts";

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
  const then = lastReading(lastRebuild, lastSlipSet) ?? whenNew(builtYear);
  if (then === null) return { least, most: Infinity };
  const ridden = riddenSince(then.date, onDate, hoursPerYear);
  // More hours at a service than that pace allows: this owner rides faster, so the pace is counted from those hours.
  return { least, most: then.engineHours + ridden < least ? least + ridden : then.engineHours + ridden };
}

type Reading = { readonly date: string; readonly engineHours: number };

function lastReading(rebuild: RememberedService, slip: RememberedService): Reading | null {
  if (!isReading(rebuild)) return isReading(slip) ? slip : null;
  return isReading(slip) && slip.date >= rebuild.date ? slip : rebuild;
}

const isReading = (service: RememberedService): service is RememberedService & Reading =>
  service.date !== null && service.engineHours !== null;

const whenNew = (builtYear: number | null): Reading | null =>
  builtYear === null ? null : { date: `${builtYear}-01-01`, engineHours: 0 };

/** Most hours that an owner is taken to have ridden since a date. */
export const riddenSince = (date: string, onDate: string, hoursPerYear: number): number =>
  Math.max(0, yearsBetween(date, onDate) * hoursPerYear);

const DAYS_PER_YEAR = 365.25;

/**
 * The latest day from which on so many hours can have been ridden.
 * @example latestDayFor(150, "2027-05-01", 150) // "2026-04-30"
 */
export const latestDayFor = (hours: number, onDate: string, hoursPerYear: number): string =>
  plusDays(onDate, -Math.ceil((hours / hoursPerYear) * DAYS_PER_YEAR));
