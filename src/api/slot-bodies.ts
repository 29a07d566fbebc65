import * as z from "zod";
import type { Offer } from "#shared/calendar/find-offers.ts";
import { isoWithOffset } from "#shared/calendar/zone-clock.ts";
import { DateText } from "#shared/craft/answers-schema.ts";
import { OFFER_WORDS } from "#shared/messages/offer-words.ts";
import type { BookedTime } from "#shared/shop/booking.ts";
import { VerdictName } from "#src/api/triage-bodies.ts";

const InstantText = z.iso.datetime({ offset: true }).describe("ISO 8601 with the shop's offset");
const slotTimes = {
  bench: z.string(),
  benchName: z.string(),
  startsAt: InstantText,
  endsAt: InstantText,
  zone: z.string().describe("IANA time zone of the shop"),
};

/** Bench time that may be held: one bench and one start. */
export const OfferAnswer = z.strictObject({
  id: z.string(),
  ...slotTimes,
  postBy: DateText.describe("The last day to post the unit"),
  why: z.string(),
});

/** Bench time that is held or booked. */
export const SlotAnswer = z.strictObject(slotTimes);

/** What GET /api/slots takes. */
export const SlotsQuery = z.strictObject({
  verdict: VerdictName,
  from: DateText.optional().describe("No offer before this date; today in the shop's zone unless given"),
});

/** What GET /api/slots answers. */
export const SlotsAnswer = z.strictObject({
  offers: z.array(OfferAnswer).max(3),
  board: z.strictObject({
    version: z.int(),
    ageSeconds: z.int().min(0).describe("A booking always asks the shop itself, whatever the board said"),
  }),
});

export const offerAnswer = (offer: Offer): z.infer<typeof OfferAnswer> => ({
  id: offer.id,
  bench: offer.bench,
  benchName: offer.benchName,
  startsAt: offer.startsAt,
  endsAt: offer.endsAt,
  zone: offer.zone,
  postBy: offer.postBy,
  why: OFFER_WORDS[offer.reason],
});

export const slotAnswer = ({ bench, benchName, startsAt, endsAt, zone }: BookedTime): z.infer<typeof SlotAnswer> => ({
  bench,
  benchName,
  startsAt: isoWithOffset(zone, startsAt),
  endsAt: isoWithOffset(zone, endsAt),
  zone,
});
