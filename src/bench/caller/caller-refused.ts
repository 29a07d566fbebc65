import { CALLER_REFUSED } from "#shared/messages/shop-caller-words.ts";
import { SLOT_REFUSED } from "#shared/messages/shop-change-words.ts";
import type { BookingRefusal, HoldRefusal } from "#shared/shop/booking.ts";

/** Why a time was not held or booked, in words. */
export const callerRefusedText = (refusal: HoldRefusal | BookingRefusal): string =>
  refusal.reason === "slot-not-offered" ? SLOT_REFUSED[refusal.why] : CALLER_REFUSED[refusal.reason];
