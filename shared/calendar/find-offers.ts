import { benchNeed } from "#shared/calendar/bench-job.ts";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { type DayFit, type FindFit, fitFinder } from "#shared/calendar/day-fit.ts";
import { offerId } from "#shared/calendar/offer-id.ts";
import { postBy } from "#shared/calendar/post-by.ts";
import { instantOfQuantum, plusQuanta, type Quantum, quantumFrom } from "#shared/calendar/quantum.ts";
import { reachOf } from "#shared/calendar/reach.ts";
import { spreadFits, WEEK_DAYS } from "#shared/calendar/spread-fits.ts";
import { openDaysBetween } from "#shared/calendar/working-days.ts";
import { isoWithOffset } from "#shared/calendar/zone-clock.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { dateOfDay, dayNumber } from "#shared/units/calendar-date.ts";

/** Why an offer stands beside the others; the words for it live with the messages. */
export type OfferReason = "soonest" | "some-days-later" | "a-week-or-more-later" | "later-that-day";

/** Bench time that an owner may hold. */
export type Offer = {
  readonly id: string;
  readonly bench: string;
  readonly benchName: string;
  readonly start: Quantum;
  /** Half-open. */
  readonly end: Quantum;
  /** ISO 8601 with the shop's offset, as `2027-03-15T09:00:00-04:00`. */
  readonly startsAt: string;
  readonly endsAt: string;
  readonly zone: string;
  /** The shop's calendar date. */
  readonly date: string;
  /** The last day to post the unit so that it is there in time. */
  readonly postBy: string;
  readonly reason: OfferReason;
};

/** What is looked for, in which shop, and when. */
export type OfferSearch = {
  readonly settings: CalendarSettings;
  /** Sorted by `from`. */
  readonly busy: readonly BusySpan[];
  readonly verdict: Verdict;
  /** The unit needs no time on the way any more. */
  readonly unitHere?: boolean;
  /** Epoch milliseconds. */
  readonly now: number;
  /** No offer before this date. */
  readonly from?: string;
};

const MOST_OFFERS = 3;
const EARLIEST = "1970-01-01";

/**
 * At most three offers in order of time: the soonest, and two more within the shop's window, on other days where there
 * is room. None where the shop has no room within a year, or never opens.
 */
export function findOffers(search: OfferSearch): readonly Offer[] {
  const { settings, busy, verdict, unitHere, now, from = EARLIEST } = search;
  const reach = reachOf(settings, verdict, now, unitHere);
  if (!reach.ok) return [];
  const { firstDay, lastDay } = reach.value;
  const { quanta } = benchNeed(verdict, settings);
  const findFit = fitFinder(settings, busy, quanta);
  const first = Math.max(dayNumber(firstDay), dayNumber(from));
  const last = dayNumber(lastDay);
  const [soonest] = fitsOfDays(findFit, first, last, quantumFrom(now));
  if (soonest === undefined) return [];
  const windowEnd = Math.min(soonest.day + settings.offerWindowDays, last);
  const later = [...fitsOfDays(findFit, soonest.day + 1, windowEnd, soonest.start)];
  const otherDays = spreadFits(soonest, later, openDaysBetween(settings));
  const sameDay = fitsLaterThatDay(findFit, soonest, quanta, MOST_OFFERS - 1 - otherDays.length);
  return [soonest, ...sameDay, ...otherDays].map((fit) => offerOf(search, soonest, fit));
}

/**
 * Fresh offers for an owner whose wish is gone: from the wished-for day on, or, where nothing is left after it, the
 * soonest there are.
 */
export function nearestOffers(search: OfferSearch, wishedDay: string): readonly Offer[] {
  const offers = findOffers({ ...search, from: wishedDay });
  return offers.length > 0 ? offers : findOffers(search);
}

/** The first fit of each day from one to another, both inclusive, looked for only as far as they are asked for. */
function* fitsOfDays(findFit: FindFit, first: number, last: number, notBefore: Quantum): Generator<DayFit> {
  for (let day = first; day <= last; day += 1) {
    const fit = findFit(day, notBefore);
    if (fit !== undefined) yield fit;
  }
}

function fitsLaterThatDay(findFit: FindFit, soonest: DayFit, quanta: number, most: number): readonly DayFit[] {
  const fits: DayFit[] = [];
  let before = soonest;
  while (fits.length < most) {
    const fit = findFit(soonest.day, plusQuanta(before.start, quanta));
    if (fit === undefined) break;
    fits.push(fit);
    before = fit;
  }
  return fits;
}

function offerOf({ settings, verdict }: OfferSearch, soonest: DayFit, fit: DayFit): Offer {
  const { zone } = settings;
  const date = dateOfDay(fit.day);
  const end = plusQuanta(fit.start, benchNeed(verdict, settings).quanta);
  return {
    id: offerId(fit.bench, fit.start),
    bench: fit.bench,
    benchName: fit.benchName,
    start: fit.start,
    end,
    startsAt: isoWithOffset(zone, instantOfQuantum(fit.start)),
    endsAt: isoWithOffset(zone, instantOfQuantum(end)),
    zone,
    date,
    postBy: postBy(date, verdict, settings),
    reason: reasonOf(soonest, fit),
  };
}

function reasonOf(soonest: DayFit, fit: DayFit): OfferReason {
  if (fit === soonest) return "soonest";
  if (fit.day === soonest.day) return "later-that-day";
  return fit.day >= soonest.day + WEEK_DAYS ? "a-week-or-more-later" : "some-days-later";
}
