import { WORDS_MOST } from "#shared/job/approval.ts";
import type { AskStart } from "#shared/job/approval-wish.ts";
import { moneyText, quoteText } from "#shared/messages/money-words.ts";
import { photoPlaceText } from "#shared/messages/photo-words.ts";
import { ASKING } from "#shared/messages/shop-approval-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { type AskProblems, type TypedAsk, workChoice } from "#src/bench/approval/ask-form.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { ProblemSummary } from "#src/bench/problem-summary.tsx";

export type AskFieldsProps = {
  readonly front: ShopSettings["front"];
  readonly job: Job;
  readonly start: AskStart;
  readonly typed: TypedAsk;
  readonly problems?: AskProblems | undefined;
  /** Names this question, so that it is asked once. */
  readonly wish: string;
  /** A manager may name any price; everybody else asks at the shop's own. */
  readonly mayPrice: boolean;
};

/** The question to the owner: filled in from the sheet, and every word of it can be changed. */
export function AskFields({ front, job, start, typed, problems = {}, wish, mayPrice }: AskFieldsProps) {
  const currency = start.offers[0]?.quote.currency ?? "";
  return (
    <form method="post" action={`/shop/jobs/${job.number}/approval`} class="screen">
      <h2>{ASKING.ask}</h2>
      <ProblemSummary
        title={ASKING.mend}
        says={ASKING.mendHow}
        problems={Object.entries(problems).map(([field, label]) => ({
          field: field === "work" ? "work.0" : field,
          label,
        }))}
      />
      <input type="hidden" name="wish" value={wish} />
      <WorkChoices start={start} typed={typed} problem={problems.work} locale={front.locale} />
      {mayPrice && (
        <LabelledField
          name="price"
          label={ASKING.price(currency)}
          hint={ASKING.priceHint}
          problem={problems.price}
          short
          control={(links) => <input type="text" inputmode="decimal" value={typed.price} {...links} />}
        />
      )}
      <LabelledField
        name="why"
        label={ASKING.why}
        problem={problems.why}
        control={(links) => (
          <textarea rows={5} maxlength={WORDS_MOST} required {...links}>
            {typed.why}
          </textarea>
        )}
      />
      {start.photos.length > 0 && <PhotoChoice {...{ job, start, typed, problem: problems.photo }} />}
      <LabelledField
        name="until"
        label={ASKING.until}
        problem={problems.until}
        short
        control={(links) => <input type="date" required value={typed.until} {...links} />}
      />
      <p class="faint">{ASKING.noMessage}</p>
      {job.goAheadMinor !== null && (
        <p>
          <strong>{ASKING.within(moneyText(job.goAheadMinor, job.plan.quote.currency, front.locale))}</strong>
        </p>
      )}
      <p class="actions">
        <button type="submit" name="how" value="ask">
          {ASKING.button}
        </button>
        {job.goAheadMinor !== null && (
          <button type="submit" name="how" value="go-ahead" class="quiet">
            {ASKING.goAhead}
          </button>
        )}
      </p>
    </form>
  );
}

type ChoiceProps = {
  readonly start: AskStart;
  readonly typed: TypedAsk;
  readonly problem: string | undefined;
};

const WorkChoices = ({ start, typed, problem, locale }: ChoiceProps & { readonly locale: string }) => (
  <fieldset>
    <legend>
      <b>{ASKING.work}</b>
    </legend>
    {problem !== undefined && <p class="problem">{problem}</p>}
    {start.offers.map(({ work, benchMinutes, quote }, place) => (
      <label class="choice">
        <input
          type="radio"
          id={`work.${place}`}
          name="work"
          value={workChoice(work, quote.minor, quote.currency)}
          checked={typed.work.split(":")[0] === work}
          required
        />
        <span>{ASKING.workAt(WORK_WORDS[work], quoteText(quote, locale), benchMinutes)}</span>
      </label>
    ))}
  </fieldset>
);

const PhotoChoice = ({ job, start, typed, problem }: ChoiceProps & { readonly job: Job }) => (
  <fieldset id="photo">
    <legend>
      <b>{ASKING.photo}</b>
    </legend>
    {problem !== undefined && <p class="problem">{problem}</p>}
    <label class="choice">
      <input type="radio" name="photo" value="" checked={typed.photo === ""} />
      {ASKING.noPhoto}
    </label>
    {start.photos.map((photo) => (
      <label class="choice">
        <input type="radio" name="photo" value={photo.id} checked={typed.photo === photo.id} />
        <img class="thumb" src={`/shop/jobs/${job.number}/photos/${photo.id}`} alt="" />
        <span>{photoPlaceText(photo)}</span>
      </label>
    ))}
  </fieldset>
);
