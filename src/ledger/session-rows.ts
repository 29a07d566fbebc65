import type { Staff } from "#shared/shop/staff.ts";
import type { Device } from "#shared/shop/staff-account.ts";
import type { OpenedSession } from "#shared/shop/staff-wishes.ts";
import { firstRow, numberIn, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";
import { staffIn } from "#src/ledger/staff-columns.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** A signed-in device of the shop is asked again after this long, however busy it is; default of this project. */
const SESSION_LIVES_MS = 14 * 86_400_000;
/** A device that nobody touched for this long, a night away from the bench, is signed out; default of this project. */
export const SESSION_IDLES_MS = 12 * 3_600_000;
/** Being seen is noted no more often than this, so that looking at pages writes next to nothing. */
const SEEN_EVERY_MS = 5 * 60_000;

/** A device at work, and whose. */
export type Session = { readonly expiresAt: number; readonly staff: Staff };

/** `passkey` = the id of the one that opened it; null where a link did. */
export type NewSession = { readonly hash: string; readonly staff: number; readonly passkey: string | null };

export function keepSession({ sql, now }: Turn, { hash, staff, passkey }: NewSession): OpenedSession {
  const expiresAt = now + SESSION_LIVES_MS;
  const query = "INSERT INTO session (hash, expires_at, staff, opened_at, seen_at, passkey) VALUES (?, ?, ?, ?, ?, ?)";
  sql.exec(query, hash, expiresAt, staff, now, now, passkey);
  return { expiresAt };
}

/** Whose device that is, while it may still work; seeing it keeps it from idling. */
export function findSession({ sql, now }: Turn, hash: string): Session | null {
  const query = `SELECT session.expires_at, session.seen_at, staff.id, staff.name, staff.role FROM session
    JOIN staff ON staff.id = session.staff AND staff.left_at IS NULL
    WHERE session.hash = ? AND session.expires_at > ? AND session.seen_at > ?`;
  const row = firstRow(sql, query, hash, now, now - SESSION_IDLES_MS);
  if (row === undefined) return null;
  if (numberIn(row, "seen_at") <= now - SEEN_EVERY_MS) noteSeen({ sql, now }, hash);
  return { expiresAt: numberIn(row, "expires_at"), staff: staffIn(row) };
}

export function closeSession({ sql }: Pick<Turn, "sql">, hash: string): void {
  sql.exec("DELETE FROM session WHERE hash = ?", hash);
}

/** The devices on which somebody is signed in, the one used last first. */
export function devicesOf({ sql, now }: Turn, staff: number): readonly Device[] {
  const query = `SELECT hash, opened_at, seen_at, passkey.label FROM session LEFT JOIN passkey ON passkey.id = session.passkey
    WHERE session.staff = ? AND expires_at > ? AND seen_at > ? ORDER BY seen_at DESC, hash`;
  return rowsOf(sql, query, staff, now, now - SESSION_IDLES_MS).map((row) => ({
    hash: textIn(row, "hash"),
    openedAt: numberIn(row, "opened_at"),
    seenAt: numberIn(row, "seen_at"),
    passkey: textOrNullIn(row, "label"),
  }));
}

/** Ends somebody's sessions: all but one, the ones of a passkey, or a single one. */
export function closeSessionsOf(
  sql: SqlStorage,
  staff: number,
  which: { readonly but: string | null } | { readonly passkey: string } | { readonly hash: string },
): void {
  if ("hash" in which) sql.exec("DELETE FROM session WHERE staff = ? AND hash = ?", staff, which.hash);
  else if ("passkey" in which) sql.exec("DELETE FROM session WHERE staff = ? AND passkey = ?", staff, which.passkey);
  else sql.exec("DELETE FROM session WHERE staff = ? AND hash IS NOT ?", staff, which.but);
}

function noteSeen({ sql, now }: Pick<Turn, "sql" | "now">, hash: string): void {
  sql.exec("UPDATE session SET seen_at = ? WHERE hash = ?", now, hash);
}
