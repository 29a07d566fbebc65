import type { BookedTime } from "#shared/shop/booking.ts";

export type Punctuality = "late" | "today" | "early";

/**
 * A unit is late once its bench time has begun without it, and early where that is on another day.
 * @param today the shop's calendar date
 */
export function punctualityOf({ startsAt, date }: BookedTime, today: string, now: number): Punctuality {
  if (startsAt <= now) return "late";
  return date > today ? "early" : "today";
}
