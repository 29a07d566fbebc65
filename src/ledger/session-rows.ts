import type { Staff } from "#shared/shop/staff.ts";
import { firstRow, numberIn } from "#src/ledger/row.ts";
import { staffIn } from "#src/ledger/staff-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** A signed-in device of the shop is asked again after this long, however busy it is; default of this project. */
export const SESSION_LIVES_MS = 14 * 86_400_000;
/** A device that nobody touched for this long, a night away from the bench, is signed out; default of this project. */
export const SESSION_IDLES_MS = 12 * 3_600_000;
/** Being seen is noted no more often than this, so that looking at pages writes next to nothing. */
const SEEN_EVERY_MS = 5 * 60_000;

/** A device at work, and whose. */
export type Session = { readonly expiresAt: number; readonly staff: Staff };

export type NewSession = { readonly hash: string; readonly staff: number; readonly passkey: string | null };

export function keepSession({ sql, now }: Turn, { hash, staff, passkey }: NewSession): { readonly expiresAt: number } {
  const expiresAt = now + SESSION_LIVES_MS;
  const query = "INSERT INTO session (hash, expires_at, staff, opened_at, seen_at, passkey) VALUES (?, ?, ?, ?, ?, ?)";
  sql.exec(query, hash, expiresAt, staff, now, now, passkey);
  return { expiresAt };
}

/** Whose device that is, while it may still work; seeing it keeps it from idling. */
export function findSession({ sql, now }: Turn, hash: string): Session | null {
  const query = `SELECT s.expires_at, s.seen_at, staff.id, staff.name, staff.role FROM session s
    JOIN staff ON staff.id = s.staff AND staff.left_at IS NULL
    WHERE s.hash = ? AND s.expires_at > ? AND s.seen_at > ?`;
  const row = firstRow(sql, query, hash, now, now - SESSION_IDLES_MS);
  if (row === undefined) return null;
  if (numberIn(row, "seen_at") <= now - SEEN_EVERY_MS)
    sql.exec("UPDATE session SET seen_at = ? WHERE hash = ?", now, hash);
  return { expiresAt: numberIn(row, "expires_at"), staff: staffIn(row) };
}

export function closeSession({ sql }: Turn, hash: string): void {
  sql.exec("DELETE FROM session WHERE hash = ?", hash);
}
