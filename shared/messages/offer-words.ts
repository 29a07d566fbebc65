import type { OfferReason } from "#shared/calendar/find-offers.ts";

/** Why an offer stands beside the others, said to the owner. */
export const OFFER_WORDS: Readonly<Record<OfferReason, string>> = {
  soonest: "The soonest time that your unit can be here.",
  "later-that-day": "Later on the same day.",
  "some-days-later": "A few days later, if you need more time to post it.",
  "a-week-or-more-later": "A week or more later.",
};

/** The same, said to the shop of a unit that is here already. */
export const HERE_OFFER_WORDS: Readonly<Record<OfferReason, string>> = {
  soonest: "The soonest time there is.",
  "later-that-day": "Later on the same day.",
  "some-days-later": "A few days later.",
  "a-week-or-more-later": "A week or more later.",
};
