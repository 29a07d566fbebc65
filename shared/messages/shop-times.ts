import { dateText } from "#shared/messages/time-words.ts";
import type { BookedTime } from "#shared/shop/booking.ts";

const MINUTE_MS = 60_000;

/**
 * Booked bench time as it was promised: the wall's day and hours, whatever the zone's law says by now.
 * @example slotText(booked, "en-GB") // "Mon, 3 May 2027, 08:00 to 12:00"
 */
export function slotText({ date, minuteOfDay, startsAt, endsAt }: BookedTime, locale: string): string {
  const end = minuteOfDay + Math.round((endsAt - startsAt) / MINUTE_MS);
  return `${dateText(date, locale)}, ${clockText(minuteOfDay, locale)} to ${clockText(end, locale)}`;
}

const clockText = (minuteOfDay: number, locale: string): string =>
  new Intl.DateTimeFormat(locale, { timeStyle: "short", timeZone: "UTC" }).format(minuteOfDay * MINUTE_MS);
