import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { AskForPasskey, PasskeyHolder, PasskeyRefusal, PasskeyWish } from "#shared/shop/staff-wishes.ts";
import { keepChallenge, useChallenge } from "#src/ledger/challenge-rows.ts";
import { keepPasskey, passkeysOf } from "#src/ledger/passkey-rows.ts";
import { noteStaffEvent } from "#src/ledger/staff-event-rows.ts";
import { findStaff } from "#src/ledger/staff-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Sets a challenge for a further passkey of somebody's. */
export function askForPasskey(turn: Turn, { staff, challenge, source }: AskForPasskey): PasskeyHolder | null {
  const holder = findStaff(turn.sql, staff);
  if (holder === null) return null;
  keepChallenge(turn, { challenge, purpose: "add-passkey", handle: holder.handle, source });
  return { name: holder.name, handle: holder.handle, known: passkeysOf(turn.sql, staff).map(({ id }) => id) };
}

/** Uses the challenge of a new passkey up, before its answer is checked; false where it does not hold. */
export function usePasskeyChallenge(
  turn: Turn,
  { staff, challenge }: Pick<AskForPasskey, "staff" | "challenge">,
): boolean {
  const holder = findStaff(turn.sql, staff);
  if (holder === null) return false;
  return useChallenge(turn, { challenge, purpose: "add-passkey", handle: holder.handle });
}

/** Keeps a passkey whose answer was checked. */
export function addPasskey({ sql, now }: Turn, { staff, passkey, label }: PasskeyWish): Outcome<null, PasskeyRefusal> {
  const holder = findStaff(sql, staff);
  if (holder === null) return refuse({ reason: "no-such-account" });
  if (!keepPasskey(sql, passkey, { staff, label, now })) return refuse({ reason: "passkey-known" });
  noteStaffEvent(sql, { at: now, staff: holder.name, what: "passkey-added", about: label });
  return accept(null);
}
