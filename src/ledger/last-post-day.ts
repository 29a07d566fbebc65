import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { postBy } from "#shared/calendar/post-by.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

type BenchDay = { readonly date: string; readonly verdict: Verdict; readonly today: string };

/** The last day to post the unit, never before today: time that was held just before midnight is still good after it. */
export function lastPostDay({ date, verdict, today }: BenchDay, calendar: CalendarSettings): string {
  const day = postBy(date, verdict, calendar);
  const isOver = day < today;
  return isOver ? today : day;
}
