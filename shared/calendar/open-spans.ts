import { type CalendarSettings, WEEKDAYS } from "#shared/calendar/calendar-settings.ts";
import { minuteOfDay } from "#shared/calendar/minute-of-day.ts";
import { quantumAt, quantumFrom } from "#shared/calendar/quantum.ts";
import type { Span } from "#shared/calendar/span.ts";
import { openDays, weekdayIndex } from "#shared/calendar/working-days.ts";
import { instantOnDay } from "#shared/calendar/zone-clock.ts";

/**
 * The stretches of exact time that the benches are worked on a day (counted from 1970-01-01), in order. On a day on
 * which the clocks change within an opening it is longer or shorter than the wall clock says; whole quanta only.
 */
export function openSpans(settings: CalendarSettings): (day: number) => readonly Span[] {
  const { zone } = settings;
  const isOpen = openDays(settings);
  const week = WEEKDAYS.map((weekday) =>
    settings.weekly[weekday].map(({ opens, closes }) => ({ opens: minuteOfDay(opens), closes: minuteOfDay(closes) })),
  );
  return (day) => {
    if (!isOpen(day)) return [];
    return (week[weekdayIndex(day)] ?? []).map(({ opens, closes }) => ({
      from: quantumFrom(instantOnDay(zone, day, opens)),
      to: quantumAt(instantOnDay(zone, day, closes)),
    }));
  };
}
