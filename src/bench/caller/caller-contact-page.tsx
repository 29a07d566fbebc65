import type { Offer } from "#shared/calendar/find-offers.ts";
import { CALLER, CALLER_CONTACT, UNIT_HERE } from "#shared/messages/shop-caller-words.ts";
import { slotText } from "#shared/messages/shop-times.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { Hold } from "#shared/shop/booking.ts";
import type { Call } from "#src/bench/caller/caller-call.ts";
import { VerdictSummary } from "#src/bench/caller/verdict-summary.tsx";
import { FactList } from "#src/bench/fact-list.tsx";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { PickOffer } from "#src/bench/pick-offer.tsx";
import { ProblemSummary } from "#src/bench/problem-summary.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { CONTACT_FIELDS, type ContactField, type ContactProblems, type TypedContact } from "#src/http/contact-form.ts";

type ContactPageProps = {
  readonly call: Call;
  /** Null where no time is held any more: then `offers` stand in the form, and nothing typed is lost. */
  readonly hold: Pick<Hold, "id" | "slot" | "until"> | null;
  readonly offers: readonly Offer[];
  /** The form as it was sent, its pick included. */
  readonly typed: TypedContact & { readonly offer?: string };
  readonly problems?: ContactProblems;
  /** Why the time was not booked. */
  readonly problem?: string | undefined;
  readonly wish: string;
};

/** Who is calling, and where the unit goes back to. */
export function CallerContactPage({ call, hold, offers, typed, problems = {}, problem, wish }: ContactPageProps) {
  const { front } = call.settings;
  const wrong = CONTACT_FIELDS.filter((field) => problems[field] !== undefined);
  return (
    <ShopPage title={call.here.unitHere ? UNIT_HERE.title : CALLER.title} front={front}>
      <ProblemSummary
        title={CALLER.mend}
        says={CALLER.kept}
        problems={wrong.map((field) => ({ field, label: CALLER_CONTACT[field] }))}
      />
      {hold !== null && <HeldTime call={call} hold={hold} />}
      <form method="post" action={`/shop/book/${call.token}/confirm${call.here.query}`} novalidate>
        <input type="hidden" name="wish" value={wish} />
        {hold === null ? (
          <PickOffer
            offers={offers}
            locale={front.locale}
            problem={problem}
            picked={typed.offer}
            unitHere={call.here.unitHere}
          />
        ) : (
          <input type="hidden" name="hold" value={hold.id} />
        )}
        <h2>{call.here.unitHere ? UNIT_HERE.contactTitle : CALLER.contactTitle}</h2>
        <p>{CALLER.oneOf}</p>
        {CONTACT_FIELDS.map((field) => (
          <ContactEntry field={field} typed={typed} problem={problems[field]} />
        ))}
        <p class="actions">
          <button type="submit">{CALLER.book}</button>
        </p>
      </form>
      <VerdictSummary call={call} />
    </ShopPage>
  );
}

const HeldTime = ({ call, hold }: { readonly call: Call; readonly hold: Pick<Hold, "slot" | "until"> }) => (
  <>
    <FactList
      facts={[
        [CALLER.held, `${slotText(hold.slot, call.settings.front.locale)}, ${hold.slot.benchName}`],
        [CALLER.heldUntil, timeText(hold.until, hold.slot.zone, call.settings.front.locale)],
      ]}
    />
    <p class="actions">
      <a
        class="button quiet"
        href={`/shop/book/${call.token}${call.here.query === "" ? "?" : `${call.here.query}&`}other`}
      >
        {CALLER.otherTime}
      </a>
    </p>
  </>
);

const KEYBOARD: Readonly<Partial<Record<ContactField, "tel" | "email">>> = { phone: "tel", email: "email" };

type EntryProps = {
  readonly field: ContactField;
  readonly typed: TypedContact;
  readonly problem: string | undefined;
};

function ContactEntry({ field, typed, problem }: EntryProps) {
  const label = CALLER_CONTACT[field];
  if (field === "collect") {
    return (
      <label class="choice">
        <input type="checkbox" id={field} name={field} value="yes" checked={typed.collect === "yes"} />
        {label}
      </label>
    );
  }
  return (
    <LabelledField
      name={field}
      label={label}
      hint={field === "goAhead" ? CALLER.goAheadHelp : undefined}
      problem={problem}
      control={(links) => (
        <input type={KEYBOARD[field] ?? "text"} value={typed[field] ?? ""} autocomplete="off" {...links} />
      )}
    />
  );
}
