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

/** Each clock by itself: the slip's runs by hours alone, the rebuild's by hours and months. Null where nothing tells. */
export type Clocks = {
  readonly slipCheckAtHours: number | null;
  readonly rebuildAtHours: number | null;
  readonly rebuildBy: string | null;
};

export const clocksOf = ({ clock, settings, slipInterval, rebuildBy }: Findings): Clocks => ({
  slipCheckAtHours: toTenths(after(clock.slipSetAtHours, slipInterval)),
  rebuildAtHours: toTenths(after(clock.rebuiltAtHours, settings.rebuildHours)),
  rebuildBy,
});

const DAYS_PER_YEAR = 365.25;

/**
 * To rank hours against dates, the hours left are taken to run at the fastest plausible pace (`hoursPerYear`). Clocks
 * that run out together are a rebuild.
 */
export function dueOf(it: Findings): Due {
  const { rebuildAtHours, slipCheckAtHours } = clocksOf(it);
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
    atEngineHours: lowest(rebuildAtHours, slipCheckAtHours),
  };
}

/** Near enough for clocks to be seen to run out together, whatever floats leave behind. */
const toSeconds = (hours: number) => Math.round(hours * 3600) / 3600;
/** As an hour meter reads. */
const toTenths = (hours: number | null) => (hours === null ? null : Math.round(hours * 10) / 10);
const after = (hours: number | null, interval: number) => (hours === null ? null : hours + interval);
const lowest = (one: number | null, other: number | null) =>
  one === null || other === null ? (one ?? other) : Math.min(one, other);
