import { ORDER, STOCK, shelfText } from "#shared/messages/stock-words.ts";
import { dateText } from "#shared/messages/time-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { StockLine } from "#shared/shop/stock.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

type OrderPageProps = {
  readonly settings: ShopSettings;
  readonly stock: readonly StockLine[];
  /** The shop's calendar date. */
  readonly today: string;
};

/** What to order and why, for the desk or on paper. */
export function OrderPage({ settings, stock, today }: OrderPageProps) {
  const { front, bench } = settings;
  const ordered = stock.filter(({ order }) => order > 0);
  return (
    <ShopPage title={ORDER.title} front={front}>
      <p>{ORDER.says(bench.orderAheadDays, bench.spareParts, dateText(today, front.locale))}</p>
      {ordered.length === 0 ? (
        <p>{ORDER.none}</p>
      ) : (
        <section class="scroll" aria-label={ORDER.title} tabindex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">{ORDER.count}</th>
                <th scope="col">{STOCK.part}</th>
                <th scope="col">{STOCK.onHand}</th>
                <th scope="col">{ORDER.because}</th>
              </tr>
            </thead>
            <tbody>
              {ordered.map((line) => (
                <tr>
                  <td>
                    <strong>{line.order}</strong>
                  </td>
                  <th scope="row">{shelfText(line)}</th>
                  <td>{line.onHand}</td>
                  <td>{reasonOf(line)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <p class="screen">
        <a href="/shop/parts">{STOCK.back}</a>
      </p>
    </ShopPage>
  );
}

function reasonOf({ wantedBy, countAgain }: StockLine): string {
  const jobs = wantedBy.map(({ number, count }) => (count === 1 ? number : `${number} (${count})`));
  const [only] = jobs;
  const why = only === undefined ? ORDER.spare : jobs.length === 1 ? ORDER.forJob(only) : ORDER.forJobs(jobs);
  return countAgain ? `${why}. ${ORDER.countFirst}` : why;
}
