import { isUrgent } from "#shared/calendar/bench-job.ts";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import { findOffers, nearestOffers, type Offer } from "#shared/calendar/find-offers.ts";
import { parseOfferId } from "#shared/calendar/offer-id.ts";
import { instantOfQuantum } from "#shared/calendar/quantum.ts";
import { FURTHEST_DAYS } from "#shared/calendar/working-days.ts";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import type { Turn } from "#src/ledger/turn.ts";

type OfferAsk = {
  readonly verdict: Verdict;
  /** The wished-for day; null = the soonest there are. */
  readonly day: string | null;
  /** Time that the asker has already and would give up for another. */
  readonly own?: BusySpan | null;
  readonly unitHere?: boolean;
};

/** Offers from the rows as they are in this turn, nearest to the wish. */
export function freshOffers(turn: Turn, { verdict, day, own = null, unitHere = false }: OfferAsk): readonly Offer[] {
  endOverdueHolds(turn);
  const { calendar } = turn.settings().settings;
  const busy = turn.busy(turn.now).filter((span) => !(span.bench === own?.bench && span.from === own.from));
  const search = { settings: calendar, busy, verdict, unitHere, now: turn.now };
  return day === null ? findOffers(search) : nearestOffers(search, day);
}

/** Where the wished-for time cannot be had: what is near it, but for an urgent job the soonest there is. */
export const offersInstead = (turn: Turn, ask: OfferAsk): readonly Offer[] =>
  freshOffers(turn, { ...ask, day: isUrgent(ask.verdict) ? null : ask.day });

/** The day of an offer within reach of the calendar; a wild one names none. */
export function dayOfOffer(turn: Turn, offer: string): string | null {
  const parsed = parseOfferId(offer);
  if (!parsed.ok) return null;
  const startsAt = instantOfQuantum(parsed.value.start);
  const isNear = Math.abs(startsAt - turn.now) < FURTHEST_DAYS * 86_400_000;
  return isNear ? wallOf(turn.settings().settings.calendar.zone, startsAt).date : null;
}
