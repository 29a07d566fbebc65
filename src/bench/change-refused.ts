import { CHANGE_REFUSED, SLOT_REFUSED } from "#shared/messages/shop-change-words.ts";
import type { ChangeRefusal } from "#shared/shop/booking.ts";

/** Why a booking was not changed, in words. */
export const changeRefusedText = (refusal: ChangeRefusal): string =>
  refusal.reason === "slot-not-offered" ? SLOT_REFUSED[refusal.why] : CHANGE_REFUSED[refusal.reason];
