import { unreachable } from "#shared/basics/unreachable.ts";
import type { SlotRefusal } from "#shared/calendar/bookable.ts";
import type { HoldRefusal } from "#shared/shop/booking.ts";

const SLOT_WORDS: Readonly<Record<SlotRefusal, string>> = {
  "not-a-slot": "Pick one of these times.",
  "no-such-bench": "That bench is not in use any more. Pick one of these times.",
  "in-the-past": "That time has passed. Pick one of these times.",
  "too-far-ahead": "That time is more than a year ahead. Pick one of these times.",
  closed: "The shop is closed at that time. Pick one of these times.",
  "before-arrival": "A unit posted today would not be there by then. Pick one of these times.",
  taken: "Someone else just took that time. These are the nearest free ones.",
};

/** Why bench time could not be held, said to the owner above the fresh offers. */
export function holdRefusedWords(refusal: HoldRefusal): string {
  switch (refusal.reason) {
    case "slot-not-offered":
      return SLOT_WORDS[refusal.why];
    case "too-many-holds":
      return "You hold as much time as one person may. Book it, or wait until it ends.";
    case "answers-ahead":
      return "A date or a year in your answers is still to come. Change that answer first.";
    case "key-reused":
      return "That form was sent before. Pick one of these times.";
    default:
      return unreachable(refusal);
  }
}
