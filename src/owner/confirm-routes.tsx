import { type Context, Hono } from "hono";
import { unreachable } from "#shared/basics/unreachable.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import { offerId } from "#shared/calendar/offer-id.ts";
import { quantumAt } from "#shared/calendar/quantum.ts";
import { step } from "#shared/intake/conversation.ts";
import { answersFrom } from "#shared/intake/draft.ts";
import { CONTACT_WORDS } from "#shared/messages/contact-words.ts";
import type { BookingRefusal, Hold } from "#shared/shop/booking.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import {
  CONTACT_FIELDS,
  type ContactProblems,
  type ReadContact,
  readContact,
  type TypedContact,
} from "#src/http/contact-form.ts";
import { ownerToken, sha256Hex } from "#src/http/owner-link.ts";
import { ConfirmPage } from "#src/owner/confirm-page.tsx";
import { holdFor } from "#src/owner/hold-time.ts";
import { type Sitting, sittingOf } from "#src/owner/own-draft.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** From held time to a booked job. */
export function confirmRoutes(needs: OwnerNeeds) {
  return new Hono()
    .get("/confirm", async (c) => {
      const sitting = await sittingOf(c, needs);
      if (!isReady(sitting)) return c.redirect("/intake", 303);
      const hold = openHold(needs, sitting);
      if (hold === null) return c.redirect("/verdict", 303);
      return c.html(await page(needs, sitting, { hold, typed: { country: sitting.settings.front.country } }));
    })
    .post("/confirm/longer", async (c) => {
      const sitting = await sittingOf(c, needs);
      const hold = openHold(needs, sitting);
      if (!isReady(sitting) || hold === null) return c.redirect("/verdict", 303);
      const offer = offerId(hold.slot.bench, quantumAt(hold.slot.startsAt));
      const held = await holdFor(c, needs, sitting, { ...(await c.req.parseBody()), offer });
      return c.redirect(held.ok ? "/confirm" : "/verdict", 303);
    })
    .post("/confirm", async (c) => {
      const sitting = await sittingOf(c, needs);
      if (!isReady(sitting)) return c.redirect("/intake", 303);
      const form = await c.req.parseBody();
      const typed = typedIn(form);
      const { front, prices } = sitting.settings;
      const read = readContact(typed, { country: front.country, currency: prices.currency });
      const hold = await holdToBook(c, needs, sitting, form);
      if (!read.ok) return c.html(await page(needs, sitting, { hold, typed, problems: read.refusal }), 422);
      if (hold === null) {
        return c.html(await page(needs, sitting, { hold, typed, notice: CONTACT_WORDS.holdEnded }), 409);
      }
      return book(c, needs, sitting, { hold, read: read.value, typed, wish: String(form["wish"] ?? "") });
    });
}

const isReady = ({ stored, now, tokenHash }: Sitting): boolean =>
  tokenHash !== null && step(stored.draft, now).next === null;

const openHold = (needs: OwnerNeeds, { stored }: Sitting): Hold | null =>
  stored.hold !== null && stored.hold.until > needs.now() ? stored.hold : null;

/** Where the form carries a new pick (the held time had gone), that is held first. */
async function holdToBook(c: Context, needs: OwnerNeeds, sitting: Sitting, form: Record<string, unknown>) {
  if (typeof form["offer"] !== "string") return openHold(needs, sitting);
  const held = await holdFor(c, needs, sitting, form);
  return held.ok ? held.value : null;
}

const typedIn = (form: Readonly<Record<string, unknown>>): TypedContact =>
  Object.fromEntries(
    CONTACT_FIELDS.flatMap((field) => (typeof form[field] === "string" ? [[field, form[field]]] : [])),
  );

type Shown = {
  readonly hold: Hold | null;
  readonly typed: TypedContact;
  readonly problems?: ContactProblems;
  readonly notice?: string;
  readonly offers?: readonly Offer[];
};

async function page(needs: OwnerNeeds, sitting: Sitting, shown: Shown) {
  const { stored, settings, now } = sitting;
  const plan = planJob(answersFrom(stored.draft), now.onDate, settings);
  const fresh = () => needs.shop.offers({ verdict: plan.judgement.verdict });
  return (
    <ConfirmPage
      front={settings.front}
      draft={stored.draft}
      plan={plan}
      hold={shown.hold}
      offers={shown.hold === null ? (shown.offers ?? (await fresh())) : []}
      typed={shown.typed}
      problems={shown.problems ?? {}}
      notice={shown.notice}
      wish={needs.newId()}
    />
  );
}

type ToBook = { readonly hold: Hold; readonly read: ReadContact; readonly typed: TypedContact; readonly wish: string };

async function book(c: Context, needs: OwnerNeeds, sitting: Sitting, { hold, read, typed, wish }: ToBook) {
  const id = needs.newId();
  const answers = answersFrom(sitting.stored.draft);
  const booked = await needs.shop.book({
    id,
    hold: hold.id,
    answers,
    ...read,
    reminders: null,
    ownerLinkHash: await sha256Hex(await ownerToken(needs.linkKey, id, 1)),
    draft: sitting.tokenHash,
    wishKey: {
      scope: `page.book.${sitting.tokenHash}`,
      key: wish,
      fingerprint: await sha256Hex(JSON.stringify([hold.id, answers, read])),
    },
  });
  if (booked.ok) {
    const token = await ownerToken(needs.linkKey, booked.value.id, booked.value.linkGeneration);
    return c.redirect(`/tag/${token}`, 303);
  }
  const { refusal } = booked;
  const offers = "offers" in refusal ? refusal.offers : [];
  return c.html(await page(needs, sitting, { hold: null, typed, notice: refusalWords(refusal), offers }), 409);
}

function refusalWords(refusal: BookingRefusal): string {
  switch (refusal.reason) {
    case "no-such-hold":
    case "hold-ended":
    case "key-reused":
      return CONTACT_WORDS.holdEnded;
    case "needs-more-time":
      return CONTACT_WORDS.needsMoreTime;
    case "not-urgent":
      return CONTACT_WORDS.notUrgent;
    case "service-after-today":
      return CONTACT_WORDS.serviceAfterToday;
    default:
      return unreachable(refusal);
  }
}
