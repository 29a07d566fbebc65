import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type Shelf, shelfOf } from "#shared/shop/shelf.ts";
import { type StockLine, stockOf } from "#shared/shop/stock.ts";
import type { Balance, StockChange } from "#shared/shop/stock-book.ts";
import type { CountWish, ReceiveWish, StockEntry, StockRefusal } from "#shared/shop/stock-wish.ts";
import { openNeeds } from "#src/ledger/laid-out-rows.ts";
import { allBalances, balanceOf, entriesOf, isKnownEntry, keepEntry } from "#src/ledger/stock-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** How many entries a shelf's page shows; default of this project. */
const NEWEST_ENTRIES = 200;

/** Every shelf: what is there, what is spoken for, what to order. */
export const readStock = ({ sql, settings, now }: Turn): readonly StockLine[] =>
  stockOf({ balances: allBalances(sql), jobs: openNeeds(sql), settings: settings().settings.bench, now });

export const readShelf = ({ sql }: Turn, shelf: Shelf): readonly StockEntry[] => entriesOf(sql, shelf, NEWEST_ENTRIES);

export const receiveParts = (turn: Turn, wish: ReceiveWish): Outcome<Balance, StockRefusal> =>
  change(turn, wish, { kind: "receipt", count: wish.count });

/** Counted by hand: the book is put right, and says why. */
export const countParts = (turn: Turn, wish: CountWish): Outcome<Balance, StockRefusal> =>
  change(turn, wish, { kind: "count", found: wish.found });

function change(
  { sql, now }: Turn,
  { shelf, staff, note, key }: ReceiveWish | CountWish,
  made: StockChange,
): Outcome<Balance, StockRefusal> {
  if (shelfOf(shelf) === undefined) return refuse({ reason: "no-such-shelf" });
  if (isKnownEntry(sql, key)) return accept(balanceOf(sql, shelf));
  return accept(keepEntry(sql, { shelf, change: made, job: null, at: now, staff, note, key }));
}
