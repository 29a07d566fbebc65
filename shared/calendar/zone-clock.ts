import { offsetPeriods } from "#shared/calendar/zone-rules.ts";
import { dateOfDay, dayNumber } from "#shared/units/calendar-date.ts";

/*
 * The only crossing between instants (epoch milliseconds) and wall time (calendar date and minute of day in a zone).
 * A wall time that comes twice means its first coming, one that is skipped is read with the offset before the gap:
 * RFC 5545 §3.3.5, and the "compatible" disambiguation of Temporal.
 */

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** What the clock on the wall shows, with its offset from UTC written `+05:30`. */
export type WallTime = { readonly date: string; readonly minuteOfDay: number; readonly offset: string };

/**
 * @param minuteOfDay minutes since midnight; 1440 is the next day's midnight
 * @example instantOf("America/New_York", "2027-03-14", 150) // 2027-03-14T07:30Z: 02:30 is skipped, so 03:30 it is
 */
export const instantOf = (zone: string, date: string, minuteOfDay: number): number =>
  instantOnDay(zone, dayNumber(date), minuteOfDay);

/** As {@link instantOf}, for a day counted from 1970-01-01: a search through a year has no time to read dates. */
export function instantOnDay(zone: string, day: number, minuteOfDay: number): number {
  const wall = day * DAY_MS + minuteOfDay * MINUTE_MS;
  let before = 0;
  for (const { from, until, offsetMs } of offsetPeriods(zone, yearOf(wall))) {
    const instant = wall - offsetMs;
    if (instant < until) return instant >= from ? instant : wall - before;
    before = offsetMs;
  }
  throw new Error(`The offsets of ${zone} do not reach the end of time`);
}

/** @example wallOf("America/New_York", Date.UTC(2027, 2, 15, 13)) // { date: "2027-03-15", minuteOfDay: 540, offset: "-04:00" } */
export function wallOf(zone: string, instant: number): WallTime {
  const offsetMs = offsetAt(zone, instant);
  const wall = instant + offsetMs;
  const day = Math.floor(wall / DAY_MS);
  return {
    date: dateOfDay(day),
    minuteOfDay: Math.floor((wall - day * DAY_MS) / MINUTE_MS),
    offset: offsetText(offsetMs),
  };
}

/** @example isoWithOffset("America/New_York", Date.UTC(2027, 2, 15, 13)) // "2027-03-15T09:00:00-04:00" */
export function isoWithOffset(zone: string, instant: number): string {
  const offsetMs = offsetAt(zone, instant);
  return new Date(instant + offsetMs).toISOString().slice(0, "YYYY-MM-DDThh:mm:ss".length) + offsetText(offsetMs);
}

function offsetAt(zone: string, instant: number): number {
  const period = offsetPeriods(zone, yearOf(instant)).find(({ until }) => instant < until);
  if (period === undefined) throw new Error(`The offsets of ${zone} do not reach the end of time`);
  return period.offsetMs;
}

const yearOf = (instant: number): number => new Date(instant).getUTCFullYear();

function offsetText(offsetMs: number): string {
  const minutes = Math.abs(offsetMs) / MINUTE_MS;
  const digits = (count: number) => String(Math.floor(count)).padStart(2, "0");
  return `${offsetMs < 0 ? "-" : "+"}${digits(minutes / 60)}:${digits(minutes % 60)}`;
}
