import type { DayFit } from "#shared/calendar/day-fit.ts";

/** Days this far apart are a real choice for an owner; default of this project. */
const OPEN_DAYS_APART = 2;
/** From here on an offer counts as a week or more later. */
export const WEEK_DAYS = 7;

/**
 * Two of the later days' fits, in order: one a few open days after the soonest, one a week or more after it, and where
 * that cannot be, what comes nearest to it. Fewer where there are not so many days.
 * @param later the first fit of each later day, in order
 * @param openDaysBetween open days after the one day, up to and with the other
 */
export function spreadFits(
  soonest: DayFit,
  later: readonly DayFit[],
  openDaysBetween: (one: number, other: number) => number,
): readonly DayFit[] {
  const isApart = (from: DayFit, fit: DayFit) => openDaysBetween(from.day, fit.day) >= OPEN_DAYS_APART;
  const second = later.find((fit) => isApart(soonest, fit)) ?? later[0];
  if (second === undefined) return [];
  const afterSecond = later.filter(({ day }) => day > second.day);
  const apart = afterSecond.filter((fit) => isApart(second, fit));
  const third =
    apart.find(({ day }) => day >= soonest.day + WEEK_DAYS) ??
    apart[0] ??
    afterSecond[0] ??
    later.find(({ day }) => day < second.day);
  if (third === undefined) return [second];
  return third.day < second.day ? [third, second] : [second, third];
}
