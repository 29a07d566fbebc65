import type { Hold } from "#shared/shop/booking.ts";
import { VERDICTS, type Verdict } from "#shared/triage/verdict.ts";
import { firstRow, numberIn, type Row, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";
import { bookedTime, SLOT_COLUMNS, type StoredSlot, slotIn, slotValues } from "#src/ledger/slot-columns.ts";

export type StoredHold = {
  readonly id: string;
  readonly state: "open" | "ended" | "booked";
  readonly source: string;
  readonly draft: string | null;
  readonly verdict: Verdict;
  readonly heldAt: number;
  readonly until: number;
  readonly slot: StoredSlot;
};

const COLUMNS = `id, state, source, draft, verdict, held_at, until, ${SLOT_COLUMNS}`;

export function keepHold(sql: SqlStorage, hold: StoredHold): void {
  sql.exec(
    `INSERT INTO hold (${COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    hold.id,
    hold.state,
    hold.source,
    hold.draft,
    hold.verdict,
    hold.heldAt,
    hold.until,
    ...slotValues(hold.slot),
  );
}

export function findHold(sql: SqlStorage, id: string): StoredHold | null {
  const row = firstRow(sql, `SELECT ${COLUMNS} FROM hold WHERE id = ?`, id);
  return row === undefined ? null : holdIn(row);
}

/** The one hold that a conversation has open. */
export function openHoldOf(sql: SqlStorage, draft: string, now: number): StoredHold | null {
  const query = `SELECT ${COLUMNS} FROM hold WHERE draft = ? AND state = 'open' AND until > ?`;
  const row = firstRow(sql, query, draft, now);
  return row === undefined ? null : holdIn(row);
}

/** Has a hold of this conversation become a booking? Asked of the holds of a day, which are few. */
export const hasBooked = (sql: SqlStorage, draft: string): boolean =>
  firstRow(sql, "SELECT 1 FROM hold WHERE draft = ? AND state = 'booked' LIMIT 1", draft) !== undefined;

/** Open in the rows, but their time is over. */
export const overdueHolds = (sql: SqlStorage, now: number): readonly StoredHold[] =>
  rowsOf(sql, `SELECT ${COLUMNS} FROM hold WHERE state = 'open' AND until <= ?`, now).map(holdIn);

/** Holds that became bookings, and would have ended until then otherwise. */
export const bookedHolds = (sql: SqlStorage, before: number): readonly StoredHold[] =>
  rowsOf(sql, `SELECT ${COLUMNS} FROM hold WHERE state = 'booked' AND until <= ?`, before).map(holdIn);

export function countOpenHolds(sql: SqlStorage, source: string, now: number): number {
  const query = "SELECT count(*) AS n FROM hold WHERE source = ? AND state = 'open' AND until > ?";
  const row = firstRow(sql, query, source, now);
  return row === undefined ? 0 : numberIn(row, "n");
}

export function setHoldState(sql: SqlStorage, id: string, state: StoredHold["state"]): void {
  sql.exec("UPDATE hold SET state = ? WHERE id = ?", state, id);
}

export const toldHold = ({ id, until, verdict, slot }: StoredHold): Hold => ({
  id,
  until,
  verdict,
  slot: bookedTime(slot),
});

function holdIn(row: Row): StoredHold {
  return {
    id: textIn(row, "id"),
    state: stateOf(textIn(row, "state")),
    source: textIn(row, "source"),
    draft: textOrNullIn(row, "draft"),
    verdict: verdictIn(row),
    heldAt: numberIn(row, "held_at"),
    until: numberIn(row, "until"),
    slot: slotIn(row),
  };
}

export function verdictIn(row: Row): Verdict {
  const verdict = VERDICTS.find((known) => known === row["verdict"]);
  if (verdict === undefined) throw new Error("A row with an unknown verdict");
  return verdict;
}

function stateOf(text: string): StoredHold["state"] {
  if (text === "open" || text === "ended" || text === "booked") return text;
  throw new Error("A hold in an unknown state");
}
