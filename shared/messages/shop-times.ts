import { dateText } from "#shared/messages/time-words.ts";
import type { BookedTime } from "#shared/shop/booking.ts";

const MINUTE_MS = 60_000;

/** A day and the hours on it, each of which is not to be broken over two lines. */
export type SlotLines = { readonly day: string; readonly hours: string };

/**
 * Booked bench time as it was promised: the wall's day and hours, whatever the zone's law says by now.
 * @example slotText(booked, "en-GB") // "Mon, 3 May 2027, 08:00 to 12:00"
 */
export function slotText(time: BookedTime, locale: string): string {
  const { day, hours } = slotLines(time, locale);
  return `${day}, ${hours}`;
}

export function slotLines({ date, minuteOfDay, startsAt, endsAt }: BookedTime, locale: string): SlotLines {
  const end = minuteOfDay + Math.round((endsAt - startsAt) / MINUTE_MS);
  return { day: dateText(date, locale), hours: `${clockText(minuteOfDay, locale)} to ${clockText(end, locale)}` };
}

const clockText = (minuteOfDay: number, locale: string): string =>
  new Intl.DateTimeFormat(locale, { timeStyle: "short", timeZone: "UTC" }).format(minuteOfDay * MINUTE_MS);
