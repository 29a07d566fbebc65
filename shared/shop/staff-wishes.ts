import type { Staff } from "#shared/shop/staff.ts";
import type { Invitation, Passkey, StaffChange } from "#shared/shop/staff-account.ts";

/** A device that was signed in. Times are epoch milliseconds. */
export type OpenedSession = { readonly expiresAt: number };

/** Too many sign-ins failed from one source; `until` = when the next may be tried. */
export type TooManyTries = { readonly reason: "too-many-tries"; readonly until: number };

/** To sign in by a link of the machine. `source` = who asks, for the cap of failures. */
export type LinkSignInWish = {
  readonly nonce: string;
  readonly nonceExpires: number;
  readonly sessionHash: string;
  readonly source: string;
};
export type LinkSignInRefusal = { readonly reason: "link-used" | "link-expired" } | TooManyTries;

/** To be asked for a passkey, any of the shop. */
export type AskToSignIn = { readonly challenge: string; readonly source: string };

/** An answer to that, not checked yet. */
export type TryToSignIn = AskToSignIn & { readonly passkey: string };
/** What the answer is checked against. */
export type SignInTry = { readonly id: number; readonly passkey: Passkey; readonly handle: string };
export type SignInRefusal = TooManyTries | { readonly reason: "challenge-ended" | "no-such-passkey" };

/** An answer whose signature was good. */
export type CheckedSignIn = {
  readonly tryId: number;
  readonly passkey: string;
  readonly counter: number;
  readonly sessionHash: string;
};

/** To be asked to make a further passkey. */
export type AskForPasskey = { readonly staff: number; readonly challenge: string; readonly source: string };
/** Whose new passkey: what it keeps of the account, and which ones there are already. */
export type PasskeyHolder = { readonly name: string; readonly handle: string; readonly known: readonly string[] };
/** A new passkey whose answer was checked. */
export type PasskeyWish = { readonly staff: number; readonly passkey: Passkey; readonly label: string };
export type PasskeyRefusal = { readonly reason: "no-such-account" | "passkey-known" };

/** A link that a manager gave, as its signature vouches for it; `inviter` is that manager's account. */
export type InviteLink = {
  readonly nonce: string;
  readonly nonceExpires: number;
  readonly invitation: Invitation;
  readonly inviter: number;
};
/** Who comes by it; null for somebody new, whose passkey keeps the link's nonce as handle. */
export type Invited = { readonly staff: Staff | null; readonly handle: string; readonly known: readonly string[] };
export type InviteRefusal = { readonly reason: "link-used" | "link-expired" | "inviter-left" | "no-such-account" };
export type InviteChallenge = { readonly link: InviteLink; readonly challenge: string };

/** `by` = the manager who gave the link, by name. */
export type InvitationNote = { readonly by: string; readonly invitation: Invitation };

/** To come in by an invitation, with a passkey that was checked. `name` is read for somebody new only. */
export type JoinWish = {
  readonly link: InviteLink;
  readonly name: string;
  readonly passkey: Passkey;
  readonly label: string;
  readonly sessionHash: string;
};
export type JoinRefusal = InviteRefusal | { readonly reason: "name-taken" | "passkey-known" };

/** `by` = who changes the account, by name. */
export type StaffWish = { readonly staff: number; readonly by: string; readonly change: StaffChange };
