import * as z from "zod";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import { answersAhead } from "#shared/craft/answers-ahead.ts";
import type { AnswersAhead } from "#shared/shop/booking.ts";
import { AnswersTold, orEarlier } from "#src/api/answers-body.ts";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { readPhone } from "#src/http/phone.ts";
import type { FieldError } from "#src/http/problem.ts";

/** Of a wish that may be wrong anywhere, what the shop's own settings are needed to judge. */
const WishTold = z
  .object({
    answers: AnswersTold.nullable().catch(null),
    contact: z
      .object({ phone: z.string().max(40) })
      .nullable()
      .catch(null),
  })
  .catch({ answers: null, contact: null });

/** What only the shop can tell to be wrong: a day after its today, a number that cannot be dialled in its country. */
export async function wrongByShop(
  wish: unknown,
  { shop, now }: Pick<ApiNeeds, "shop" | "now">,
): Promise<readonly FieldError[]> {
  const { answers, contact } = WishTold.parse(wish);
  if (answers === null && contact === null) return [];
  const { calendar, front } = (await shop.settings()).settings;
  const ahead = answers === null ? [] : answersAhead(answers, wallOf(calendar.zone, now()).date);
  const isWrong = contact !== null && !readPhone(contact.phone, front.country).ok;
  return [...aheadErrors(ahead), ...(isWrong ? [phoneError(front.country)] : [])];
}

/** The fields of answers that speak of a time after today. */
export const aheadErrors = (ahead: AnswersAhead["ahead"]): readonly FieldError[] =>
  ahead.map(({ field, latest }) => ({ field: `answers.${field}`, accepted: orEarlier(latest) }));

export const phoneError = (country: string): FieldError => ({
  field: "contact.phone",
  accepted: `a phone number, with + and the country code unless it is in ${country}`,
});
