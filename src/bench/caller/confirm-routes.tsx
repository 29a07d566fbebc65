import { type Context, Hono } from "hono";
import { accept, type Outcome } from "#shared/basics/outcome.ts";
import type { Booking, BookingRefusal, HoldRefusal } from "#shared/shop/booking.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { CallEnv } from "#src/bench/caller/call-env.tsx";
import { type Call, offersFor } from "#src/bench/caller/caller-call.ts";
import { CallerContactPage } from "#src/bench/caller/caller-contact-page.tsx";
import { callerRefusedText } from "#src/bench/caller/caller-refused.ts";
import { bookForCall, holdForCall } from "#src/bench/caller/caller-wishes.ts";
import { refusedStatus } from "#src/bench/change-refused.ts";
import { linkPagePath } from "#src/bench/link-pass.ts";
import { type ReadContact, readContact } from "#src/http/contact-form.ts";
import { readForm } from "#src/http/read-form.ts";

/** From held time to a booked job, with the link to hand over. */
export function confirmRoutes(needs: BenchNeeds) {
  return new Hono<CallEnv>().post("/:call/confirm", async (c) => {
    const { call } = c.var;
    const form = await readForm(c);
    const { front, prices } = call.settings;
    const contact = readContact(form, { country: front.country, currency: prices.currency });
    if (!contact.ok) return c.html(await contactPage(needs, call, { form, problems: contact.refusal }), 422);
    const booked = await book(c, needs, { form, contact: contact.value });
    if (!booked.ok) {
      const { refusal } = booked;
      return c.html(await contactPage(needs, call, { form, refusal }), refusedStatus(refusal));
    }
    const { jobNumber: number, linkGeneration } = booked.value;
    return c.redirect(await linkPagePath({ number, linkGeneration }, needs), 303);
  });
}

type Form = Readonly<Record<string, string>>;
type Refusal = HoldRefusal | BookingRefusal;

/** Where the form carries a new pick, since the held time had gone, that is held first. */
async function book(
  { var: { call, staff } }: Context<CallEnv>,
  needs: BenchNeeds,
  { form, contact }: { readonly form: Form; readonly contact: ReadContact },
): Promise<Outcome<Booking, Refusal>> {
  const { offer, wish = "" } = form;
  const hold =
    offer === undefined
      ? accept({ id: form["hold"] ?? "" })
      : await holdForCall(needs, call, { offer, wish, source: staff.hash });
  return hold.ok ? bookForCall(needs, call, { hold: hold.value.id, wish, contact, staff: staff.name }) : hold;
}

type Again = {
  readonly form: Form;
  readonly problems?: Readonly<Record<string, string>>;
  readonly refusal?: Refusal;
};

/** The form once more with all that was typed; the held time stays where nothing speaks against it. */
async function contactPage(needs: BenchNeeds, call: Call, { form, problems = {}, refusal }: Again) {
  const hold = refusal === undefined ? call.hold : null;
  const fresh = () => needs.shop.offers(offersFor(call));
  const offers = refusal !== undefined && "offers" in refusal ? refusal.offers : hold === null ? await fresh() : [];
  return (
    <CallerContactPage
      call={call}
      hold={hold}
      offers={offers}
      typed={form}
      problems={problems}
      problem={refusal && callerRefusedText(refusal)}
      wish={needs.newId()}
    />
  );
}
