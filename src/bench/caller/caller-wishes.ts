import type { Outcome } from "#shared/basics/outcome.ts";
import {
  type Booking,
  type BookingRefusal,
  FIRST_GENERATION,
  type Hold,
  type HoldRefusal,
} from "#shared/shop/booking.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { Call } from "#src/bench/caller/caller-call.ts";
import type { ReadContact } from "#src/http/contact-form.ts";
import { ownerToken, sha256Hex } from "#src/http/owner-link.ts";

/** `source` is whose open holds are counted together. */
type HoldForm = { readonly offer: string; readonly wish: string; readonly source: string };

/** Holds a time for the caller; an earlier one of the same call is given up for it. */
export async function holdForCall(
  needs: BenchNeeds,
  { answers, plan, tokenHash, here: { unitHere } }: Call,
  { offer, wish, source }: HoldForm,
): Promise<Outcome<Hold, HoldRefusal>> {
  return needs.shop.hold({
    id: needs.newId(),
    offer,
    verdict: plan.judgement.verdict,
    answers,
    source,
    draft: tokenHash,
    unitHere,
    wishKey: {
      scope: `shop.hold.${tokenHash}`,
      key: wish,
      fingerprint: await sha256Hex(JSON.stringify([offer, answers, unitHere])),
    },
  });
}

/** `staff` is who books, by name. */
type BookForm = {
  readonly hold: string;
  readonly wish: string;
  readonly contact: ReadContact;
  readonly staff: string;
};

/** Books the held time. The same form sent twice gets the same booking. */
export async function bookForCall(
  { shop, newId, linkKey }: BenchNeeds,
  { answers, tokenHash, here: { unitHere } }: Call,
  { hold, wish, contact, staff }: BookForm,
): Promise<Outcome<Booking, BookingRefusal>> {
  const id = newId();
  return shop.book({
    id,
    hold,
    answers,
    ...contact,
    // The shop that books sets the price itself.
    priceMinor: null,
    by: "shop",
    staff,
    unitHere,
    reminders: null,
    ownerLinkHash: await sha256Hex(await ownerToken(linkKey, id, FIRST_GENERATION)),
    draft: tokenHash,
    wishKey: {
      scope: `shop.book.${tokenHash}`,
      key: wish,
      fingerprint: await sha256Hex(JSON.stringify([hold, answers, contact, unitHere])),
    },
  });
}
