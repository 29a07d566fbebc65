import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { benchNeed, isUrgent } from "#shared/calendar/bench-job.ts";
import { changeableUntil } from "#shared/calendar/changeable.ts";
import { instantOfQuantum, plusQuanta } from "#shared/calendar/quantum.ts";
import { reachOf } from "#shared/calendar/reach.ts";
import { answersAhead } from "#shared/craft/answers-ahead.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import type { AnswersAhead } from "#shared/shop/booking.ts";
import { type JobPlan, planJob } from "#shared/shop/job-plan.ts";
import type { Quote } from "#shared/shop/prices.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import type { StoredHold } from "#src/ledger/hold-rows.ts";
import { lastPostDay } from "#src/ledger/last-post-day.ts";
import type { StoredSlot } from "#src/ledger/slot-columns.ts";

type BookingCase = {
  readonly hold: StoredHold | null;
  readonly answers: Answers;
  readonly unitHere?: boolean;
  /** The price that was shown; null = none. */
  readonly priceMinor: number | null;
  readonly settings: ShopSettings;
  /** The shop's calendar date. */
  readonly today: string;
  readonly now: number;
};

export type BookingDecision = {
  readonly hold: StoredHold;
  readonly plan: JobPlan;
  /** The time that is booked: the hold's, or its first part where the work needs less. */
  readonly slot: StoredSlot;
  readonly postBy: string;
  readonly changeableUntil: number;
};

export type BookingDecisionRefusal =
  | { readonly reason: "no-such-hold" }
  | { readonly reason: "already-booked" }
  | { readonly reason: "hold-ended"; readonly verdict: Verdict }
  | { readonly reason: "needs-more-time"; readonly verdict: Verdict }
  | { readonly reason: "not-urgent"; readonly verdict: Verdict }
  | { readonly reason: "price-changed"; readonly quote: Quote }
  | AnswersAhead;

/** The answers are judged again: neither the length of the work nor its urgency is taken from the asker. */
export function decideBooking(it: BookingCase): Outcome<BookingDecision, BookingDecisionRefusal> {
  const { hold, settings } = it;
  if (hold === null) return refuse({ reason: "no-such-hold" });
  if (hold.state === "booked") return refuse({ reason: "already-booked" });
  const ahead = answersAhead(it.answers, it.today);
  if (ahead.length > 0) return refuse({ reason: "answers-ahead", ahead });
  const plan = planJob(it.answers, it.today, settings);
  const { verdict } = plan.judgement;
  if (hold.state === "ended" || hold.until <= it.now) return refuse({ reason: "hold-ended", verdict });
  const { quanta } = benchNeed(verdict, settings.calendar);
  const to = plusQuanta(hold.slot.from, quanta);
  if (to > hold.slot.to) return refuse({ reason: "needs-more-time", verdict });
  if (it.unitHere !== true && isTooEarly(hold, verdict, settings)) return refuse({ reason: "not-urgent", verdict });
  if ((it.priceMinor ?? plan.quote.minor) !== plan.quote.minor) {
    return refuse({ reason: "price-changed", quote: plan.quote });
  }
  return accept({
    hold,
    plan,
    slot: { ...hold.slot, to, endsAt: instantOfQuantum(to) },
    postBy: lastPostDay({ date: hold.slot.date, verdict, today: it.today }, settings.calendar),
    changeableUntil: changeableUntil(hold.slot.startsAt, settings.calendar),
  });
}

/** Time that only an urgent job could be offered, counted from when it was held: midnight takes nobody's hold away. */
function isTooEarly(hold: StoredHold, verdict: Verdict, { calendar }: ShopSettings): boolean {
  if (!isUrgent(hold.verdict) || isUrgent(verdict)) return false;
  const reach = reachOf(calendar, verdict, hold.heldAt);
  return !reach.ok || hold.slot.date < reach.value.firstDay;
}
