import { unreachable } from "#shared/basics/unreachable.ts";
import type { SlotRefusal } from "#shared/calendar/bookable.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { BookingRefusal, ChangeRefusal, HoldRefusal, KeyReused } from "#shared/shop/booking.ts";
import { offerAnswer } from "#src/api/slot-bodies.ts";
import { aheadErrors } from "#src/api/wrong-by-shop.ts";
import { notAccepted, problem } from "#src/http/problem.ts";

export function holdRefused(refusal: HoldRefusal): Response {
  switch (refusal.reason) {
    case "slot-not-offered":
      return slotNotOffered(refusal);
    case "too-many-holds":
      return problem({
        status: 429,
        reason: refusal.reason,
        detail: `There are ${refusal.most} open holds already. Book one, or wait until one has ended.`,
      });
    case "answers-ahead":
      return notAccepted(aheadErrors(refusal.ahead));
    case "key-reused":
      return keyReused(refusal);
    default:
      return unreachable(refusal);
  }
}

export function bookingRefused(refusal: BookingRefusal): Response {
  switch (refusal.reason) {
    case "no-such-hold":
      return problem({ status: 409, reason: refusal.reason, detail: "There is no such hold. Hold a slot first." });
    case "already-booked":
      return problem({ status: 409, reason: refusal.reason, detail: "The time of this hold is booked already." });
    case "hold-ended":
      return conflict(refusal, "The hold has ended. Hold one of these slots instead.");
    case "needs-more-time":
      return conflict(refusal, "By these answers the job needs more bench time than was held.", {
        verdict: refusal.verdict,
      });
    case "not-urgent":
      return conflict(refusal, "By these answers the job is not urgent, and the held slot is kept for urgent ones.", {
        verdict: refusal.verdict,
      });
    case "price-changed":
      return problem({
        status: 409,
        reason: refusal.reason,
        detail: "The price has changed since it was shown. Show the new one, then book with it.",
        more: { priceMinor: refusal.quote.minor, currency: refusal.quote.currency },
      });
    case "answers-ahead":
      return notAccepted(aheadErrors(refusal.ahead));
    case "key-reused":
      return keyReused(refusal);
    default:
      return unreachable(refusal);
  }
}

export function changeRefused(refusal: ChangeRefusal): Response {
  switch (refusal.reason) {
    case "no-such-booking":
      return problem({
        status: 404,
        reason: refusal.reason,
        detail: "There is no such booking, or the token does not open it.",
      });
    case "already-cancelled":
      return problem({ status: 409, reason: refusal.reason, detail: "The booking is cancelled already." });
    case "too-late":
      return problem({
        status: 409,
        reason: refusal.reason,
        detail: "It is too late to change this booking here. Call the shop.",
        more: { until: new Date(refusal.until).toISOString() },
      });
    case "unit-here":
      return problem({
        status: 409,
        reason: refusal.reason,
        detail: "The unit has come to the shop, so the booking cannot be changed here any more. Call the shop.",
      });
    case "slot-not-offered":
      return slotNotOffered(refusal);
    default:
      return unreachable(refusal);
  }
}

type SlotNotOffered = {
  readonly reason: "slot-not-offered";
  readonly why: SlotRefusal;
  readonly offers: readonly Offer[];
};

function slotNotOffered(refusal: SlotNotOffered): Response {
  if (refusal.why === "not-a-slot") return notAccepted([{ field: "slot", accepted: "the id of an offer" }]);
  return conflict(refusal, SLOT_WORDS[refusal.why], { why: refusal.why });
}

const SLOT_WORDS: Readonly<Record<Exclude<SlotRefusal, "not-a-slot">, string>> = {
  "no-such-bench": "The shop has no such bench.",
  "in-the-past": "That time has passed.",
  "too-far-ahead": "That is further ahead than the shop plans.",
  closed: "The shop is not open for all of that time.",
  "before-arrival": "A unit that is posted today would not be there yet.",
  taken: "That bench time is taken.",
};

type WithOffers = { readonly reason: string; readonly offers: readonly Offer[] };

function conflict({ reason, offers }: WithOffers, detail: string, more: Readonly<Record<string, unknown>> = {}) {
  return problem({ status: 409, reason, detail, more: { ...more, offers: offers.map(offerAnswer) } });
}

const keyReused = ({ reason }: KeyReused): Response =>
  problem({ status: 422, reason, detail: "This Idempotency-Key has been used for another request. Make a new one." });
