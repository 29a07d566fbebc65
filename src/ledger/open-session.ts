import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { FIRST_STAFF_NAME } from "#shared/shop/staff.ts";
import type { LinkSignInRefusal, LinkSignInWish, OpenedSession } from "#shared/shop/staff-wishes.ts";
import { keepSession } from "#src/ledger/session-rows.ts";
import { beginTry, strikeOutTry } from "#src/ledger/sign-in-tries.ts";
import { noteStaffEvent } from "#src/ledger/staff-event-rows.ts";
import { addStaff, firstManager } from "#src/ledger/staff-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";
import { useLink } from "#src/ledger/used-link-rows.ts";

/**
 * A sign-in link of the machine opens one session, once, as the first manager; where there is none yet, it makes that
 * account.
 */
export function openSession(turn: Turn, wish: LinkSignInWish): Outcome<OpenedSession, LinkSignInRefusal> {
  const { sql, now } = turn;
  const began = beginTry(turn, wish.source);
  if (!began.ok) return began;
  if (wish.nonceExpires <= now) return refuse({ reason: "link-expired" });
  if (!useLink(sql, wish.nonce, wish.nonceExpires)) return refuse({ reason: "link-used" });
  strikeOutTry(sql, began.value);
  const manager = firstManager(sql) ?? makeFirstManager(turn, wish.nonce);
  noteStaffEvent(sql, { at: now, staff: null, what: "signed-in-by-link", about: manager.name });
  return accept(keepSession(turn, { hash: wish.sessionHash, staff: manager.id, passkey: null }));
}

/** The link's nonce is random and never seen again: as good a handle as any. */
function makeFirstManager({ sql, now }: Turn, nonce: string) {
  const staff = addStaff(sql, { handle: nonce, name: FIRST_STAFF_NAME, role: "manager" }, now);
  noteStaffEvent(sql, { at: now, staff: null, what: "first-account", about: staff.name });
  return staff;
}
