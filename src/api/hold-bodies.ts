import * as z from "zod";
import type { Hold } from "#shared/shop/booking.ts";
import { WishAnswers } from "#src/api/answers-body.ts";
import { SlotAnswer, slotAnswer } from "#src/api/slot-bodies.ts";
import { VerdictName } from "#src/api/triage-bodies.ts";

/** What POST /api/holds takes. */
export const HoldRequest = z.strictObject({
  slot: z.string().min(1).max(40).describe("Id of an offer"),
  verdict: VerdictName,
  answers: WishAnswers.optional().describe("Where they come along, they are judged, and `verdict` is not used"),
});

/** What POST /api/holds answers. */
export const HoldAnswer = z.strictObject({
  hold: z.string(),
  until: z.iso.datetime().describe("The hold ends then unless it is booked"),
  slot: SlotAnswer,
});

export const holdAnswer = ({ id, until, slot }: Hold): z.infer<typeof HoldAnswer> => ({
  hold: id,
  until: new Date(until).toISOString(),
  slot: slotAnswer(slot),
});
