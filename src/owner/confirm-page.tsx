import type { Child } from "hono/jsx";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { Draft } from "#shared/intake/draft.ts";
import { CONTACT_WORDS as WORDS } from "#shared/messages/contact-words.ts";
import { quoteText } from "#shared/messages/money-words.ts";
import { OFFER_WORDS } from "#shared/messages/offer-words.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import type { Hold } from "#shared/shop/booking.ts";
import type { JobPlan } from "#shared/shop/job-plan.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { CONTACT_FIELDS, type ContactField, type ContactProblems, type TypedContact } from "#src/http/contact-form.ts";
import { PageFrame } from "#src/http/page-frame.tsx";
import { Tag } from "#src/owner/tag.tsx";

export type ConfirmPageProps = {
  readonly front: ShopSettings["front"];
  readonly draft: Draft;
  readonly plan: JobPlan;
  /** Null where the held time has run out: then `offers` stand in the form, and nothing typed is lost. */
  readonly hold: Hold | null;
  readonly offers: readonly Offer[];
  readonly typed: TypedContact;
  readonly problems: ContactProblems;
  readonly notice?: string | undefined;
  readonly wish: string;
};

/** The contact, asked only now and only to book. */
export function ConfirmPage({ front, draft, plan, hold, offers, typed, problems, notice, wish }: ConfirmPageProps) {
  const fields = { typed, problems };
  return (
    <PageFrame title={WORDS.title} front={front} kind="owner">
      <main id="main" class="beside">
        <Tag draft={draft} />
        <div class="talk">
          <h1 tabindex={-1}>{WORDS.title}</h1>
          {notice !== undefined && (
            <p class="notice" role="alert">
              {notice}
            </p>
          )}
          <ProblemList problems={problems} />
          <dl class="facts">
            <dt>{PAGE_WORDS.job}</dt>
            <dd>{WORK_WORDS[plan.quote.work]}</dd>
            <dt>{PAGE_WORDS.price}</dt>
            <dd>{quoteText(plan.quote, front.locale)}</dd>
            {hold !== null && <HeldTime hold={hold} locale={front.locale} />}
          </dl>
          <form method="post" action="/confirm" data-keep="contact" novalidate>
            <input type="hidden" name="wish" value={wish} />
            <input type="hidden" name="price" value={plan.quote.minor} />
            {hold === null ? (
              <PickAgain offers={offers} locale={front.locale} />
            ) : (
              <input type="hidden" name="hold" value={hold.id} />
            )}
            <h2>{WORDS.reach}</h2>
            <Entry name="name" auto="name" {...fields} />
            <p class="faint">{WORDS.oneOf}</p>
            <Entry name="phone" auto="tel" type="tel" {...fields} />
            <Entry name="email" auto="email" type="email" {...fields} />
            <h2>{WORDS.back}</h2>
            <label class="choice">
              <input type="checkbox" name="collect" value="yes" checked={typed.collect === "yes"} />
              {WORDS.labels.collect}
            </label>
            <Entry name="line1" auto="address-line1" {...fields} />
            <Entry name="line2" auto="address-line2" {...fields} />
            <Entry name="region" auto="address-level2" {...fields} />
            <div class="pair short">
              <Entry name="postcode" auto="postal-code" {...fields} />
              <Entry name="country" auto="country" {...fields} />
            </div>
            <h2>{WORDS.ifYouLike}</h2>
            <Entry name="serial" {...fields} />
            <Entry name="goAhead" {...fields}>
              {WORDS.goAheadHelp(plan.quote.currency)}
            </Entry>
            <p class="faint">{WORDS.privacy}</p>
            <p class="actions">
              <button type="submit">{WORDS.book}</button>
              {hold !== null && <HoldActions />}
            </p>
          </form>
        </div>
      </main>
    </PageFrame>
  );
}

/** What is wrong, in one place and in the order of the form, each a link to its field. */
function ProblemList({ problems }: { readonly problems: ContactProblems }) {
  const found = CONTACT_FIELDS.filter((field) => problems[field] !== undefined);
  if (found.length === 0) return null;
  return (
    <div class="problem" role="alert">
      <p>{WORDS.mend}</p>
      <ul>
        {found.map((field) => (
          <li>
            <a href={`#${field}`}>{WORDS.labels[field]}</a>: {problems[field]}
          </li>
        ))}
      </ul>
    </div>
  );
}

const HeldTime = ({ hold, locale }: { readonly hold: Hold; readonly locale: string }) => (
  <>
    <dt>{PAGE_WORDS.benchTime}</dt>
    <dd>
      {timeText(hold.slot.startsAt, hold.slot.zone, locale)}, {hold.slot.benchName}
    </dd>
    <dt>{PAGE_WORDS.heldUntil}</dt>
    <dd>
      <time datetime={new Date(hold.until).toISOString()} data-until={hold.until}>
        {timeText(hold.until, hold.slot.zone, locale)}
      </time>
    </dd>
  </>
);

/** In the form itself, so that what was typed comes back with the answer. */
const HoldActions = () => (
  <>
    <button type="submit" class="quiet" name="longer" value="yes">
      {WORDS.longer}
    </button>
    <a class="button quiet" href="/verdict">
      {WORDS.other}
    </a>
  </>
);

const PickAgain = ({ offers, locale }: { readonly offers: readonly Offer[]; readonly locale: string }) => (
  <fieldset>
    <legend>
      <h2>{WORDS.pickAgain}</h2>
    </legend>
    {offers.map((offer, index) => (
      <label class="choice">
        <input type="radio" name="offer" value={offer.id} checked={index === 0} />
        <span>
          {timeText(Date.parse(offer.startsAt), offer.zone, locale)}, {offer.benchName}.{" "}
          <small>{OFFER_WORDS[offer.reason]}</small>
        </span>
      </label>
    ))}
  </fieldset>
);

type EntryProps = {
  readonly name: ContactField;
  readonly typed: TypedContact;
  readonly problems: ContactProblems;
  readonly auto?: string;
  readonly type?: "text" | "tel" | "email";
  readonly children?: Child;
};

/** Help and problem stand outside of the label, so that the field is called by its label alone. */
function Entry({ name, typed, problems, auto = "off", type = "text", children }: EntryProps) {
  const problem = problems[name];
  const described = [children && `${name}-help`, problem && `${name}-problem`].filter(Boolean).join(" ");
  return (
    <div class="field">
      <label for={name}>{WORDS.labels[name]}</label>
      {children !== undefined && <small id={`${name}-help`}>{children}</small>}
      {problem !== undefined && (
        <small class="problem-text" id={`${name}-problem`}>
          {problem}
        </small>
      )}
      <input
        id={name}
        name={name}
        type={type}
        autocomplete={auto}
        value={typed[name] ?? ""}
        aria-invalid={problem === undefined ? undefined : "true"}
        aria-describedby={described === "" ? undefined : described}
      />
    </div>
  );
}
