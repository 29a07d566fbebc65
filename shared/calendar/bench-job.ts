import type { BenchJob, CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { quantaFor } from "#shared/calendar/quantum.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** What a verdict asks of the calendar. */
export type BenchNeed = { readonly quanta: number; readonly leadWorkingDays: number };

/** @example benchJob("not-due") // "slip-check": an owner who wants one anyway gets one */
export const benchJob = (verdict: Verdict): BenchJob => (verdict === "not-due" ? "slip-check" : verdict);

/** A unit that must not be ridden is sent express, and the bench waits less long for it. */
export const isUrgent = (verdict: Verdict): boolean => verdict === "stop-riding";

/** How much bench time a verdict takes and how long its unit is on the way. */
export const benchNeed = (verdict: Verdict, settings: CalendarSettings): BenchNeed => ({
  quanta: quantaFor(settings.minutes[benchJob(verdict)]),
  leadWorkingDays: isUrgent(verdict) ? settings.leadWorkingDays.urgent : settings.leadWorkingDays.standard,
});
