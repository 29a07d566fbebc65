import type { Findings } from "#shared/triage/findings.ts";
import { dayNumber } from "#shared/units/calendar-date.ts";

/** When the unit is next due by its clocks alone, whatever the symptoms. It may lie in the past. */
export type Due = {
  /** Of the clock that runs out first. */
  readonly kind: "slip-check" | "full-rebuild";
  /** The earliest date of any clock; null where no date is known. */
  readonly by: string | null;
  /** The lowest engine hours of any clock, to a tenth; null where no hours are known. */
  readonly atEngineHours: number | null;
};

const DAYS_PER_YEAR = 365.25;

/**
 * To rank hours against dates, the hours left are taken to run at the fastest plausible pace (`hoursPerYear`). Clocks
 * that run out together are a rebuild.
 */
export function dueOf(it: Findings): Due {
  const { rebuiltAtHours, slipSetAtHours } = it.clock;
  const daysFor = (hoursLeft: number) => (toSeconds(hoursLeft) / it.settings.hoursPerYear) * DAYS_PER_YEAR;
  const today = dayNumber(it.onDate);
  const rebuildDay = Math.min(
    it.rebuildBy === null ? -Infinity : dayNumber(it.rebuildBy),
    today + daysFor(it.settings.rebuildHours - it.sinceRebuild.most),
  );
  const slipDay = today + daysFor(it.slipInterval - it.sinceSlipSet.most);
  return {
    kind: slipDay < rebuildDay ? "slip-check" : "full-rebuild",
    by: it.rebuildBy,
    atEngineHours: toTenths(
      lowest(after(rebuiltAtHours, it.settings.rebuildHours), after(slipSetAtHours, it.slipInterval)),
    ),
  };
}

/** Near enough for clocks to be seen to run out together, whatever floats leave behind. */
const toSeconds = (hours: number) => Math.round(hours * 3600) / 3600;
/** As an hour meter reads. */
const toTenths = (hours: number | null) => (hours === null ? null : Math.round(hours * 10) / 10);
const after = (hours: number | null, interval: number) => (hours === null ? null : hours + interval);
const lowest = (one: number | null, other: number | null) =>
  one === null || other === null ? (one ?? other) : Math.min(one, other);
