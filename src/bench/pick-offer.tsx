import type { Offer } from "#shared/calendar/find-offers.ts";
import { HERE_OFFER_WORDS, OFFER_WORDS } from "#shared/messages/offer-words.ts";
import { MOVE } from "#shared/messages/shop-change-words.ts";
import { dateText, timeText } from "#shared/messages/time-words.ts";

type PickProps = {
  readonly offers: readonly Offer[];
  readonly locale: string;
  readonly problem?: string | undefined;
  /** The offer that was picked before, where the form is shown again. */
  readonly picked?: string | undefined;
  /** Nothing has to be posted any more. */
  readonly unitHere?: boolean;
};

/** The offers as one choice, to stand in a form; its field is named `offer`. */
export function PickOffer({ offers, locale, problem, picked, unitHere = false }: PickProps) {
  if (offers.length === 0) return <p class="notice">{MOVE.none}</p>;
  return (
    <fieldset aria-describedby={problem === undefined ? undefined : "offer-problem"}>
      <legend>
        <h2>{MOVE.pick}</h2>
      </legend>
      {problem !== undefined && (
        <p class="problem" id="offer-problem" role="alert">
          {problem}
        </p>
      )}
      {offers.map((offer) => (
        <label class="choice">
          <input type="radio" name="offer" value={offer.id} checked={offer.id === picked} required />
          <span>
            <strong>
              <time datetime={offer.startsAt}>{timeText(Date.parse(offer.startsAt), offer.zone, locale)}</time>
            </strong>
            , {offer.benchName}
            <br />
            <small>
              {unitHere
                ? HERE_OFFER_WORDS[offer.reason]
                : `${OFFER_WORDS[offer.reason]} ${MOVE.postBy(dateText(offer.postBy, locale))}`}
            </small>
          </span>
        </label>
      ))}
    </fieldset>
  );
}
