import type { Staff, StaffRole } from "#shared/shop/staff.ts";

/** Signatures that a passkey may make: ECDSA on P-256, which nearly all make, and RSA, as older computers do. */
export const PASSKEY_ALGORITHMS = ["ES256", "RS256"] as const;
export type PasskeyAlgorithm = (typeof PASSKEY_ALGORITHMS)[number];

/** A passkey as it is checked. Keys and ids are base64url; the key is a SubjectPublicKeyInfo. */
export type Passkey = {
  readonly id: string;
  readonly publicKey: string;
  readonly algorithm: PasskeyAlgorithm;
  /** How often it has signed, as it says itself; 0 where it does not count. */
  readonly counter: number;
  readonly transports: readonly string[];
};

/** A passkey as its holder knows it. Times are epoch milliseconds. */
export type PasskeyEntry = {
  readonly id: string;
  readonly label: string;
  readonly addedAt: number;
  readonly usedAt: number | null;
};

/** A device that is signed in. */
export type Device = {
  /** Of its token; names the session. */
  readonly hash: string;
  readonly openedAt: number;
  readonly seenAt: number;
  /** The label of the passkey that opened it; null where a link did. */
  readonly passkey: string | null;
};

/** Somebody's account with all that belongs to it. */
export type StaffAccount = Staff & {
  readonly addedAt: number;
  /** When the account was ended. */
  readonly leftAt: number | null;
  readonly passkeys: readonly PasskeyEntry[];
  readonly devices: readonly Device[];
};

/** What happened to accounts and settings, in these words; the sentences for them live with the messages. */
export const STAFF_EVENTS = [
  "first-account",
  "signed-in-by-link",
  "invited",
  "invited-back",
  "joined",
  "renamed",
  "role-changed",
  "account-ended",
  "passkey-added",
  "passkey-removed",
  "devices-signed-out",
  "settings-saved",
] as const;
export type StaffEventName = (typeof STAFF_EVENTS)[number];

export type StaffEvent = {
  readonly at: number;
  /** Who did it, by name; null where the machine's own link did. */
  readonly staff: string | null;
  readonly what: StaffEventName;
  /** Whom or what it is about. */
  readonly about: string | null;
};

/** What a link invites to: a new account with a role, or a new passkey for somebody who lost theirs. */
export type Invitation =
  | { readonly to: "join"; readonly role: StaffRole }
  | { readonly to: "come-back"; readonly staff: number };

/** What may be changed about an account. */
export type StaffChange =
  | { readonly what: "rename"; readonly name: string }
  | { readonly what: "set-role"; readonly role: StaffRole }
  | { readonly what: "end" }
  | { readonly what: "remove-passkey"; readonly passkey: string }
  | { readonly what: "sign-out"; readonly device: string }
  /** `but` = the device at hand. */
  | { readonly what: "sign-out-all"; readonly but: string | null };

export type StaffChangeRefusal = { readonly reason: "no-such-account" | "last-manager" | "name-taken" };

/** Spaces at the ends and twice inside go; null where nothing readable is left or it is too long. */
export function readStaffName(typed: string): string | null {
  const name = typed.replace(/\s+/gu, " ").trim();
  return name !== "" && name.length <= 60 && !/\p{C}/u.test(name) ? name : null;
}
