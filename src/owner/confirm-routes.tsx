import { type Context, Hono } from "hono";
import type { Outcome } from "#shared/basics/outcome.ts";
import { unreachable } from "#shared/basics/unreachable.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import { offerId } from "#shared/calendar/offer-id.ts";
import { quantumAt } from "#shared/calendar/quantum.ts";
import { step } from "#shared/intake/conversation.ts";
import { answersFrom } from "#shared/intake/draft.ts";
import { CONTACT_WORDS } from "#shared/messages/contact-words.ts";
import { type BookingRefusal, FIRST_GENERATION, type Hold } from "#shared/shop/booking.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import {
  CONTACT_FIELDS,
  type ContactProblems,
  type ReadContact,
  readContact,
  type TypedContact,
} from "#src/http/contact-form.ts";
import { ownerToken, sha256Hex } from "#src/http/owner-link.ts";
import { readForm } from "#src/http/read-form.ts";
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
    .post("/confirm", async (c) => {
      const sitting = await sittingOf(c, needs);
      if (!isReady(sitting)) return c.redirect("/intake", 303);
      const form = await readForm(c);
      const typed = typedIn(form);
      const { front, prices } = sitting.settings;
      const read = readContact(typed, { country: front.country, currency: prices.currency });
      const offer = offerToHold(needs, sitting, form);
      const picked = offer === null ? null : await holdFor(c, needs, sitting, { ...form, offer });
      const hold = picked === null ? openHold(needs, sitting) : holdIn(picked);
      if (isLonger(form) && hold !== null) return c.html(await page(needs, sitting, { hold, typed }));
      if (!read.ok) return c.html(await page(needs, sitting, { hold, typed, problems: read.refusal }), 422);
      const held = picked === null ? form["hold"] : holdIn(picked)?.id;
      if (typeof held !== "string") {
        const notice = picked === null || isLonger(form) ? CONTACT_WORDS.holdEnded : CONTACT_WORDS.taken;
        return c.html(await page(needs, sitting, { hold: null, typed, notice }), 409);
      }
      const { wish = "", price } = form;
      const priceMinor = price === undefined ? null : Number(price);
      return book(c, needs, sitting, { hold: held, read: read.value, typed, wish: String(wish), priceMinor });
    });
}

type Form = Readonly<Record<string, unknown>>;

const isReady = ({ stored, now, tokenHash }: Sitting): boolean =>
  tokenHash !== null && step(stored.draft, now).next === null;

const openHold = (needs: OwnerNeeds, { stored }: Sitting): Hold | null =>
  stored.hold !== null && stored.hold.until > needs.now() ? stored.hold : null;

const isLonger = (form: Form): boolean => form["longer"] !== undefined;

/** A new pick, where the held time had gone; or the held time itself, to be held for longer. */
function offerToHold(needs: OwnerNeeds, sitting: Sitting, form: Form): string | null {
  if (typeof form["offer"] === "string") return form["offer"];
  const hold = isLonger(form) ? openHold(needs, sitting) : null;
  return hold === null ? null : offerId(hold.slot.bench, quantumAt(hold.slot.startsAt));
}

const holdIn = (held: Outcome<Hold, unknown>): Hold | null => (held.ok ? held.value : null);

const typedIn = (form: Form): TypedContact =>
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

type ToBook = {
  readonly hold: string;
  readonly read: ReadContact;
  readonly typed: TypedContact;
  readonly wish: string;
  /** What the page that was sent showed. */
  readonly priceMinor: number | null;
};

async function book(c: Context, needs: OwnerNeeds, sitting: Sitting, asked: ToBook) {
  const { hold, read, typed, wish, priceMinor } = asked;
  const id = needs.newId();
  const answers = answersFrom(sitting.stored.draft);
  const booked = await needs.shop.book({
    id,
    hold,
    answers,
    ...read,
    priceMinor,
    by: "owner",
    reminders: null,
    ownerLinkHash: await sha256Hex(await ownerToken(needs.linkKey, id, FIRST_GENERATION)),
    draft: sitting.tokenHash,
    wishKey: {
      scope: `page.book.${sitting.tokenHash}`,
      key: wish,
      fingerprint: await sha256Hex(JSON.stringify([hold, answers, read, priceMinor])),
    },
  });
  if (booked.ok) {
    const token = await ownerToken(needs.linkKey, booked.value.id, booked.value.linkGeneration);
    return c.redirect(`/tag/${token}?done=booked`, 303);
  }
  const { refusal } = booked;
  const offers = "offers" in refusal ? { offers: refusal.offers } : {};
  // At another price the held time stays held: the page comes again with the new price to agree to.
  const kept = refusal.reason === "price-changed" ? openHold(needs, sitting) : null;
  return c.html(await page(needs, sitting, { hold: kept, typed, notice: refusalWords(refusal), ...offers }), 409);
}

function refusalWords(refusal: BookingRefusal): string {
  switch (refusal.reason) {
    case "no-such-hold":
    case "hold-ended":
    case "key-reused":
      return CONTACT_WORDS.holdEnded;
    case "already-booked":
      return CONTACT_WORDS.alreadyBooked;
    case "needs-more-time":
      return CONTACT_WORDS.needsMoreTime;
    case "not-urgent":
      return CONTACT_WORDS.notUrgent;
    case "price-changed":
      return CONTACT_WORDS.priceChanged;
    case "answers-ahead":
      return CONTACT_WORDS.answersAhead;
    default:
      return unreachable(refusal);
  }
}
