import type { Offer } from "#shared/calendar/find-offers.ts";
import { OFFER_WORDS } from "#shared/messages/offer-words.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { dateText, timeText } from "#shared/messages/time-words.ts";

type OffersProps = {
  readonly offers: readonly Offer[];
  readonly locale: string;
  /** Where the pick is posted to. */
  readonly action: string;
  readonly button: string;
  /** Names this wish, so that a double touch or a repeated post holds once. */
  readonly wish: string;
};

/** Bench time to pick from, each with its reason. */
export function Offers({ offers, locale, action, button, wish }: OffersProps) {
  if (offers.length === 0) {
    return <p class="notice">{PAGE_WORDS.noOffers}</p>;
  }
  return (
    <>
      {offers.map((offer) => (
        <form method="post" action={action} class="offer">
          <p>
            <strong>
              <time datetime={offer.startsAt}>{timeText(Date.parse(offer.startsAt), offer.zone, locale)}</time>
            </strong>
            , {offer.benchName}
          </p>
          <p class="faint">
            {OFFER_WORDS[offer.reason]} {PAGE_WORDS.postBy(dateText(offer.postBy, locale))}
          </p>
          <input type="hidden" name="offer" value={offer.id} />
          <input type="hidden" name="wish" value={wish} />
          <button type="submit">{button}</button>
        </form>
      ))}
    </>
  );
}
