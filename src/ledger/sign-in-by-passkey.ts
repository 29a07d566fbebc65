import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type {
  AskToSignIn,
  CheckedSignIn,
  OpenedSession,
  SignInRefusal,
  SignInTry,
  TooManyTries,
  TryToSignIn,
} from "#shared/shop/staff-wishes.ts";
import { keepChallenge, useChallenge } from "#src/ledger/challenge-rows.ts";
import { findPasskey, notePasskeyUse } from "#src/ledger/passkey-rows.ts";
import { keepSession } from "#src/ledger/session-rows.ts";
import { beginTry, mayTry, strikeOutTry } from "#src/ledger/sign-in-tries.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Sets a challenge to sign in by any passkey of the shop. */
export function askToSignIn(turn: Turn, { challenge, source }: AskToSignIn): Outcome<null, TooManyTries> {
  const may = mayTry(turn, source);
  if (may.ok) keepChallenge(turn, { challenge, purpose: "sign-in", handle: "", source });
  return may;
}

/** An answer came: uses up its challenge, and counts it as failed until its signature has been checked. */
export function tryToSignIn(turn: Turn, wish: TryToSignIn): Outcome<SignInTry, SignInRefusal> {
  const began = beginTry(turn, wish.source);
  if (!began.ok) return began;
  if (!useChallenge(turn, { challenge: wish.challenge, purpose: "sign-in", handle: "" }))
    return refuse({ reason: "challenge-ended" });
  const found = findPasskey(turn.sql, wish.passkey);
  if (found === null) return refuse({ reason: "no-such-passkey" });
  return accept({ id: began.value, passkey: found.passkey, handle: found.handle });
}

/** The signature was good: opens the session, unless passkey or account went while it was checked. */
export function signInByPasskey(
  turn: Turn,
  { tryId, passkey, counter, sessionHash }: CheckedSignIn,
): Outcome<OpenedSession, { readonly reason: "no-such-passkey" }> {
  const found = findPasskey(turn.sql, passkey);
  const isBehind = found !== null && found.passkey.counter > 0 && counter <= found.passkey.counter;
  if (found === null || isBehind) return refuse({ reason: "no-such-passkey" });
  strikeOutTry(turn.sql, tryId);
  notePasskeyUse(turn.sql, passkey, counter, turn.now);
  return accept(keepSession(turn, { hash: sessionHash, staff: found.staff, passkey }));
}
