import { jobNumber } from "#shared/shop/job-number.ts";
import { type NamedShelf, SHELVES, type Shelf } from "#shared/shop/shelf.ts";
import { type Balance, balanceAfter, changeOf, EMPTY, type StockChange } from "#shared/shop/stock-book.ts";
import type { StockEntry } from "#shared/shop/stock-wish.ts";
import { firstRow, numberIn, numberOrNullIn, type Row, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";

/** What the book says of a shelf: its newest entry tells. */
export function balanceOf(sql: SqlStorage, { part, family }: Shelf): Balance {
  const query = `SELECT on_hand, count_again FROM stock_entry WHERE part = ? AND family = ? ORDER BY step DESC LIMIT 1`;
  const row = firstRow(sql, query, part, family);
  return row === undefined ? EMPTY : balanceIn(row);
}

export const allBalances = (sql: SqlStorage): readonly (NamedShelf & Balance)[] =>
  SHELVES.map((shelf) => ({ ...shelf, ...balanceOf(sql, shelf) }));

export type NewEntry = {
  readonly shelf: Shelf;
  readonly change: StockChange;
  readonly job: number | null;
  readonly at: number;
  readonly staff: string;
  readonly note: string | null;
  readonly key: string;
};

/** Writes one entry, and answers what the book says now. */
export function keepEntry(sql: SqlStorage, { shelf, change, job, at, staff, note, key }: NewEntry): Balance {
  const before = balanceOf(sql, shelf);
  const after = balanceAfter(before, change);
  sql.exec(
    `INSERT INTO stock_entry (part, family, kind, change, on_hand, count_again, job, at, staff, note, key)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    shelf.part,
    shelf.family,
    change.kind,
    changeOf(before, change),
    after.onHand,
    after.countAgain ? 1 : 0,
    job,
    at,
    staff,
    note,
    key,
  );
  return after;
}

/** Was this wish granted already? */
export const isKnownEntry = (sql: SqlStorage, key: string): boolean =>
  firstRow(sql, "SELECT 1 FROM stock_entry WHERE key = ?", key) !== undefined;

/** What a job took of each shelf, taken back ones off. */
export type Used = Shelf & { readonly used: number };

export const usedByJob = (sql: SqlStorage, job: number): readonly Used[] =>
  rowsOf(sql, "SELECT part, family, -sum(change) AS used FROM stock_entry WHERE job = ? GROUP BY part, family", job)
    .map(usedIn)
    .filter(({ used }) => used > 0);

function usedIn(row: Row): Used {
  const [part, family] = [textIn(row, "part"), textIn(row, "family")];
  const shelf = SHELVES.find((it) => it.part === part && it.family === family);
  if (shelf === undefined) throw new Error("A part was used that is in no catalogue");
  return { part, family: shelf.family, used: numberIn(row, "used") };
}

/** The newest entries of a shelf, newest first. */
export const entriesOf = (sql: SqlStorage, { part, family }: Shelf, most: number): readonly StockEntry[] =>
  rowsOf(
    sql,
    "SELECT * FROM stock_entry WHERE part = ? AND family = ? ORDER BY step DESC LIMIT ?",
    part,
    family,
    most,
  ).map(entryIn);

function entryIn(row: Row): StockEntry {
  const job = numberOrNullIn(row, "job");
  return {
    ...balanceIn(row),
    kind: kindIn(row),
    change: numberIn(row, "change"),
    job: job === null ? null : jobNumber(job),
    at: numberIn(row, "at"),
    staff: textIn(row, "staff"),
    note: textOrNullIn(row, "note"),
  };
}

const balanceIn = (row: Row): Balance => ({
  onHand: numberIn(row, "on_hand"),
  countAgain: numberIn(row, "count_again") === 1,
});

function kindIn(row: Row): StockChange["kind"] {
  const kind = (["receipt", "use", "use-undone", "count"] as const).find((known) => known === row["kind"]);
  if (kind === undefined) throw new Error("A stock entry is of a kind that is not known");
  return kind;
}
