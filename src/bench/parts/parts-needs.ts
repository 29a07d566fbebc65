import type { Outcome } from "#shared/basics/outcome.ts";
import type { Shelf } from "#shared/shop/shelf.ts";
import type { StockLine } from "#shared/shop/stock.ts";
import type { Balance } from "#shared/shop/stock-book.ts";
import type {
  CountWish,
  JobPartLine,
  JobPartRefusal,
  LayOutWish,
  ReceiveWish,
  StockEntry,
  StockRefusal,
  UseWish,
} from "#shared/shop/stock-wish.ts";

/** What the pages of parts ask of the shop's object. */
export type PartsShop = {
  readonly stock: () => Promise<readonly StockLine[]>;
  readonly shelf: (shelf: Shelf) => Promise<readonly StockEntry[]>;
  readonly receiveParts: (wish: ReceiveWish) => Promise<Outcome<Balance, StockRefusal>>;
  readonly countParts: (wish: CountWish) => Promise<Outcome<Balance, StockRefusal>>;
  readonly jobParts: (number: string) => Promise<readonly JobPartLine[] | null>;
  readonly usePart: (wish: UseWish) => Promise<Outcome<Balance, JobPartRefusal>>;
  readonly takePartBack: (wish: UseWish) => Promise<Outcome<Balance, JobPartRefusal>>;
  readonly layOutPart: (wish: LayOutWish) => Promise<Outcome<readonly JobPartLine[], JobPartRefusal>>;
};
