import type { Offer } from "#shared/calendar/find-offers.ts";
import { CALLER, UNIT_HERE } from "#shared/messages/shop-caller-words.ts";
import type { Call } from "#src/bench/caller/caller-call.ts";
import { VerdictSummary } from "#src/bench/caller/verdict-summary.tsx";
import { PickOffer } from "#src/bench/pick-offer.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type OffersPageProps = {
  readonly call: Call;
  readonly offers: readonly Offer[];
  /** Names this wish, so that a form sent twice holds once. */
  readonly wish: string;
  readonly problem?: string | undefined;
};

/** The verdict, and the bench time to pick from. */
export const CallerOffersPage = ({ call, offers, wish, problem }: OffersPageProps) => (
  <ShopPage title={call.here.unitHere ? UNIT_HERE.title : CALLER.title} front={call.settings.front}>
    <VerdictSummary call={call} />
    <form method="post" action={`/shop/book/${call.token}/hold${call.here.query}`}>
      <input type="hidden" name="wish" value={wish} />
      <PickOffer offers={offers} locale={call.settings.front.locale} problem={problem} unitHere={call.here.unitHere} />
      {offers.length > 0 && (
        <p class="actions">
          <button type="submit">{CALLER.hold}</button>
        </p>
      )}
    </form>
  </ShopPage>
);
