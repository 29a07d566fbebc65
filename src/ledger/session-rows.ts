import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { firstRow, numberIn } from "#src/ledger/row.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** A signed-in device of the shop is asked again after this long; default of this project. */
export const SESSION_LIVES_MS = 14 * 86_400_000;

export type Session = { readonly expiresAt: number };
export type SessionWish = { readonly nonce: string; readonly nonceExpires: number; readonly sessionHash: string };
export type SessionRefusal = { readonly reason: "link-used" } | { readonly reason: "link-expired" };

/** A sign-in link opens one session, once: its nonce is kept until the link would have expired anyway. */
export function openSession({ sql, now }: Turn, wish: SessionWish): Outcome<Session, SessionRefusal> {
  if (wish.nonceExpires <= now) return refuse({ reason: "link-expired" });
  const used = firstRow(sql, "SELECT 1 FROM used_link WHERE nonce = ?", wish.nonce);
  if (used !== undefined) return refuse({ reason: "link-used" });
  const expiresAt = now + SESSION_LIVES_MS;
  sql.exec("INSERT INTO used_link (nonce, expires_at) VALUES (?, ?)", wish.nonce, wish.nonceExpires);
  sql.exec("INSERT INTO session (hash, expires_at) VALUES (?, ?)", wish.sessionHash, expiresAt);
  return accept({ expiresAt });
}

export function findSession({ sql, now }: Turn, sessionHash: string): Session | null {
  const row = firstRow(sql, "SELECT expires_at FROM session WHERE hash = ? AND expires_at > ?", sessionHash, now);
  return row === undefined ? null : { expiresAt: numberIn(row, "expires_at") };
}

export function closeSession({ sql }: Turn, sessionHash: string): void {
  sql.exec("DELETE FROM session WHERE hash = ?", sessionHash);
}
