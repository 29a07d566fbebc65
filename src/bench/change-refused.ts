import { CHANGE_REFUSED, SLOT_REFUSED } from "#shared/messages/shop-change-words.ts";
import type { BookingRefusal, ChangeRefusal, HoldRefusal } from "#shared/shop/booking.ts";

/** Why a booking was not changed, in words. */
export const changeRefusedText = (refusal: ChangeRefusal): string =>
  refusal.reason === "slot-not-offered" ? SLOT_REFUSED[refusal.why] : CHANGE_REFUSED[refusal.reason];

/** A form without a pick is a bad form; anything else clashes with what has happened meanwhile. */
export const refusedStatus = (refusal: ChangeRefusal | HoldRefusal | BookingRefusal): 409 | 422 =>
  refusal.reason === "slot-not-offered" && refusal.why === "not-a-slot" ? 422 : 409;
