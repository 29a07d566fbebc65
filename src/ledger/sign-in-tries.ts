import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { TooManyTries } from "#shared/shop/staff-wishes.ts";
import { firstRow, numberIn, rowsOf } from "#src/ledger/row.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Sign-ins that may fail from one source within the window; defaults of this project. */
const MOST_FAILED_TRIES = 10;
export const TRIES_WINDOW_MS = 10 * 60_000;

/** Whether a source may try to sign in just now. */
export function mayTry({ sql, now }: Turn, source: string): Outcome<null, TooManyTries> {
  const query = "SELECT at FROM sign_in_try WHERE source = ? AND at > ? ORDER BY at DESC LIMIT ?";
  const tries = rowsOf(sql, query, source, now - TRIES_WINDOW_MS, MOST_FAILED_TRIES);
  const oldest = tries[MOST_FAILED_TRIES - 1];
  if (oldest === undefined) return accept(null);
  return refuse({ reason: "too-many-tries", until: numberIn(oldest, "at") + TRIES_WINDOW_MS });
}

/** Counts a try as failed until it is struck out. */
export function beginTry(turn: Turn, source: string): Outcome<number, TooManyTries> {
  const may = mayTry(turn, source);
  if (!may.ok) return may;
  const row = firstRow(turn.sql, "INSERT INTO sign_in_try (source, at) VALUES (?, ?) RETURNING id", source, turn.now);
  if (row === undefined) throw new Error("A try was not noted");
  return accept(numberIn(row, "id"));
}

/** A sign-in that went well is no failure. */
export function strikeOutTry(sql: SqlStorage, id: number): void {
  sql.exec("DELETE FROM sign_in_try WHERE id = ?", id);
}
