import { Temporal } from "@js-temporal/polyfill";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import type { CalendarSettings, Weekday } from "#shared/calendar/calendar-settings.ts";

/*
 * Says what is open and what fits by looking at the wall clock of every quarter-hour by itself, with a date library
 * that the calendar does not use. Slow and plain on purpose.
 */

type Wall = { readonly date: string; readonly minute: number; readonly weekday: Weekday };
const wallsOfZones = new Map<string, Map<number, Wall>>();

export function wallOfQuantum(zone: string, quantum: number): Wall {
  const walls = wallsOfZones.get(zone) ?? new Map<number, Wall>();
  wallsOfZones.set(zone, walls);
  const known = walls.get(quantum);
  if (known !== undefined) return known;
  const there = Temporal.Instant.fromEpochMilliseconds(quantum * 900_000)
    .toZonedDateTimeISO(zone)
    .toPlainDateTime();
  const wall: Wall = {
    date: there.toPlainDate().toString(),
    minute: there.hour * 60 + there.minute,
    weekday: String(there.dayOfWeek) as Weekday,
  };
  walls.set(quantum, wall);
  return wall;
}

const openingsOfShops = new WeakMap<CalendarSettings, Map<number, string | null>>();

/** Which of its day's openings a quarter-hour lies in, as text that no other opening has; null when closed. */
function openingAt(settings: CalendarSettings, quantum: number): string | null {
  const openings = openingsOfShops.get(settings) ?? new Map<number, string | null>();
  openingsOfShops.set(settings, openings);
  const known = openings.get(quantum);
  if (known !== undefined) return known;
  const found = findOpening(settings, wallOfQuantum(settings.zone, quantum));
  openings.set(quantum, found);
  return found;
}

function findOpening(settings: CalendarSettings, { date, minute, weekday }: Wall): string | null {
  if (settings.closures.some(({ from, to }) => from <= date && date <= to)) return null;
  const opening = settings.weekly[weekday].find(
    ({ opens, closes }) => minutes(opens) <= minute && minute < minutes(closes),
  );
  return opening === undefined ? null : `${date} ${opening.opens}`;
}

const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

export const isOpenDate = (settings: CalendarSettings, date: string): boolean =>
  settings.weekly[String(Temporal.PlainDate.from(date).dayOfWeek) as Weekday].length > 0 &&
  !settings.closures.some(({ from, to }) => from <= date && date <= to);

export const isWithinOneOpening = (settings: CalendarSettings, from: number, to: number): boolean => {
  const opening = openingAt(settings, from);
  if (opening === null) return false;
  for (let quantum = from + 1; quantum < to; quantum += 1) if (openingAt(settings, quantum) !== opening) return false;
  return true;
};

export const isFree = (busy: readonly BusySpan[], bench: string, from: number, to: number): boolean =>
  busy.every((span) => span.bench !== bench || Math.max(span.from, from) >= Math.min(span.to, to));

/** The day that a unit posted on a date stands on the bench; null where the shop does not open often enough. */
export function arrivalDate(settings: CalendarSettings, posted: string, workingDays: number): string | null {
  let day = Temporal.PlainDate.from(posted);
  let counted = 0;
  for (let tries = 0; tries <= 365; tries += 1, day = day.add({ days: 1 })) {
    if (!isOpenDate(settings, day.toString())) continue;
    if (counted === workingDays) return day.toString();
    counted += 1;
  }
  return null;
}

export const todayIn = (zone: string, now: number): string => dateIn(zone, now).toString();
export const lastDayIn = (zone: string, now: number): string => dateIn(zone, now).add({ days: 365 }).toString();

const dateIn = (zone: string, now: number) =>
  Temporal.Instant.fromEpochMilliseconds(now).toZonedDateTimeISO(zone).toPlainDate();
