import { SHELF_WORDS, STOCK } from "#shared/messages/stock-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { StockLine } from "#shared/shop/stock.ts";
import { shelfPath } from "#src/bench/parts/shelf-path.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

type StockPageProps = { readonly front: ShopSettings["front"]; readonly stock: readonly StockLine[] };

/** Every shelf, what needs a hand first. */
export function StockPage({ front, stock }: StockPageProps) {
  const kinds = stock.filter(({ order }) => order > 0).length;
  return (
    <ShopPage title={STOCK.title} front={front}>
      <p class="faint">{STOCK.says}</p>
      <p class="screen">
        {kinds === 0 ? (
          STOCK.nothingToOrder
        ) : (
          <a class="button" href="/shop/parts/order">
            {STOCK.toOrder(kinds)}
          </a>
        )}
      </p>
      <section class="scroll" aria-label={STOCK.title} tabindex={0}>
        <table class="stock">
          <thead>
            <tr>
              <th scope="col">{STOCK.part}</th>
              <th scope="col">{STOCK.onHand}</th>
              <th scope="col">{STOCK.reserved}</th>
              <th scope="col">{STOCK.free}</th>
              <th scope="col">{STOCK.state}</th>
            </tr>
          </thead>
          <tbody>
            {stock
              .toSorted((one, other) => rank(one) - rank(other))
              .map((line) => (
                <StockRow line={line} />
              ))}
          </tbody>
        </table>
      </section>
    </ShopPage>
  );
}

const StockRow = ({ line }: { readonly line: StockLine }) => (
  <tr>
    <th scope="row">
      <a class="touch" href={shelfPath(line)}>
        {line.name}
        <small>{SHELF_WORDS[line.family]}</small>
      </a>
    </th>
    <td>{line.onHand}</td>
    <td>{line.reserved}</td>
    <td>{line.free}</td>
    <td>
      {line.countAgain && <strong class="signal-word">{STOCK.countAgain}</strong>}{" "}
      {line.low ? <strong>{STOCK.low}</strong> : !line.countAgain && <span class="faint">{STOCK.enough}</span>}
    </td>
  </tr>
);

const rank = ({ countAgain, low, reserved }: StockLine): number =>
  countAgain ? 0 : low && reserved > 0 ? 1 : low ? 2 : 3;
