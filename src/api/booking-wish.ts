import type * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type BookingWish, FIRST_GENERATION } from "#shared/shop/booking.ts";
import type { Contact } from "#shared/shop/people.ts";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import type { BookingRequest } from "#src/api/booking-bodies.ts";
import type { ReadWish } from "#src/api/read-wish.ts";
import { phoneError } from "#src/api/wrong-by-shop.ts";
import { ownerToken, sha256Hex } from "#src/http/owner-link.ts";
import { readPhone } from "#src/http/phone.ts";
import { notAccepted } from "#src/http/problem.ts";

type Needs = Pick<ApiNeeds, "shop" | "newId" | "linkKey">;

/** What the shop's object is asked for a booking; the refusal is the finished answer. */
export async function bookingWish(
  { asked, wishKey }: ReadWish<z.output<typeof BookingRequest>>,
  { shop, newId, linkKey }: Needs,
): Promise<Outcome<BookingWish, Response>> {
  const contact = await contactOf(asked.contact, shop);
  if (!contact.ok) return contact;
  const id = newId();
  return accept({
    id,
    hold: asked.hold,
    answers: asked.answers,
    contact: contact.value,
    returnTo: asked.returnTo,
    serial: asked.serial ?? null,
    goAheadMinor: asked.goAheadMinor ?? null,
    priceMinor: asked.priceMinor ?? null,
    by: "owner",
    reminders: asked.reminders === undefined ? null : { text: asked.reminders.text },
    ownerLinkHash: await sha256Hex(await ownerToken(linkKey, id, FIRST_GENERATION)),
    draft: null,
    wishKey,
  });
}

/** Stored phone numbers are E.164, so that the shop can dial every one of them. */
async function contactOf(contact: Contact, shop: Needs["shop"]): Promise<Outcome<Contact, Response>> {
  if (contact.phone === undefined) return accept(contact);
  const { country } = (await shop.settings()).settings.front;
  const phone = readPhone(contact.phone, country);
  if (phone.ok) return accept({ ...contact, phone: phone.value });
  return refuse(notAccepted([phoneError(country)]));
}
