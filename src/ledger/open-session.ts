import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { FIRST_STAFF_NAME } from "#shared/shop/staff.ts";
import { firstRow } from "#src/ledger/row.ts";
import { keepSession } from "#src/ledger/session-rows.ts";
import { noteStaffEvent } from "#src/ledger/staff-event-rows.ts";
import { addStaff, firstManager } from "#src/ledger/staff-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

export type SessionWish = { readonly nonce: string; readonly nonceExpires: number; readonly sessionHash: string };
export type SessionRefusal = { readonly reason: "link-used" } | { readonly reason: "link-expired" };
export type OpenedSession = { readonly expiresAt: number };

/**
 * A sign-in link of the machine opens one session, once, as the first manager; where there is none yet, it makes that
 * account. Its nonce is kept until the link would have expired anyway.
 */
export function openSession(turn: Turn, wish: SessionWish): Outcome<OpenedSession, SessionRefusal> {
  const { sql, now } = turn;
  if (wish.nonceExpires <= now) return refuse({ reason: "link-expired" });
  if (!useLink(sql, wish.nonce, wish.nonceExpires)) return refuse({ reason: "link-used" });
  const manager = firstManager(sql) ?? makeFirstManager(turn, wish.nonce);
  return accept(keepSession(turn, { hash: wish.sessionHash, staff: manager.id, passkey: null }));
}

/** False where it was used before. */
function useLink(sql: SqlStorage, nonce: string, expires: number): boolean {
  if (firstRow(sql, "SELECT 1 FROM used_link WHERE nonce = ?", nonce) !== undefined) return false;
  sql.exec("INSERT INTO used_link (nonce, expires_at) VALUES (?, ?)", nonce, expires);
  return true;
}

/** The link's nonce is random and never seen again: as good a handle as any. */
function makeFirstManager({ sql, now }: Turn, nonce: string) {
  const staff = addStaff(sql, { handle: nonce, name: FIRST_STAFF_NAME, role: "manager" }, now);
  noteStaffEvent(sql, { at: now, staff: null, what: "first-account", about: staff.name });
  return staff;
}
