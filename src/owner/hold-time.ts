import type { Context } from "hono";
import { type Outcome, refuse } from "#shared/basics/outcome.ts";
import { answersFrom } from "#shared/intake/draft.ts";
import type { Hold, HoldRefusal } from "#shared/shop/booking.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import type { Sitting } from "#src/owner/own-draft.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** Holds the bench time that a form names, for this conversation; an earlier hold of it ends with the new one. */
export async function holdFor(
  c: Context,
  needs: OwnerNeeds,
  { stored, tokenHash }: Sitting,
  form: Readonly<Record<string, unknown>>,
): Promise<Outcome<Hold, HoldRefusal>> {
  const { offer, wish } = form;
  if (typeof offer !== "string" || typeof wish !== "string" || tokenHash === null) {
    return refuse({ reason: "slot-not-offered", why: "not-a-slot", offers: [] });
  }
  return needs.shop.hold({
    id: needs.newId(),
    offer,
    verdict: "not-due",
    answers: answersFrom(stored.draft),
    source: await needs.sourceOf(c.req.raw),
    draft: tokenHash,
    wishKey: { scope: `page.hold.${tokenHash}`, key: `${wish}.${offer}`, fingerprint: await sha256Hex(offer) },
  });
}
