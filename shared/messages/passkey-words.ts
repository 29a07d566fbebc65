/** What the passkey form says, on the page and by its script. */
export const PASSKEY_FORM = {
  signIn: "Sign in with a passkey",
  add: "Make a passkey",
  label: "What this passkey is called",
  labelHint: "So that you know it in the list: “Bench tablet”, “My phone”.",
  labelDefault: "This device",
  noScript: "Passkeys need JavaScript, which is off or did not load.",
  what: "A passkey is kept by your phone, tablet, computer or security key. You show it with your fingerprint, face or PIN.",
} as const;

/** Said by the script, beside the button. */
export const PASSKEY_TROUBLE = {
  unsupported: "This browser cannot use passkeys. Use a newer one, or another device.",
  insecure: "This page was not reached by a secure address, so the browser refuses passkeys. Use https.",
  stopped: "Nothing was done: the passkey was not shown, or it took too long. Try again.",
  known: "This device has a passkey for your account already.",
  offline: "The shop cannot be reached. Look at the network, and try again.",
} as const;

/** Why there are no passkeys at an address. */
export const NO_PASSKEYS = {
  "numeric-address": "Passkeys need an address with a name, and this one is a number.",
  "insecure-address": "Passkeys need a secure address, one that begins with https.",
  byName: "Open the same page by its name instead:",
} as const;

/** Why an answer of a passkey was not taken. */
export const PASSKEY_PROBLEM = {
  unreadable: "The browser's answer could not be read. Try again.",
  "challenge-ended": "That took too long, or the page was sent twice. Try again.",
  "not-accepted": "The passkey was not accepted. Try again, or use another one.",
  "no-such-passkey": "This passkey is not known here. It may have been removed, or its account has ended.",
  "passkey-known": "This passkey is known already.",
} as const;
export type PasskeyProblem = keyof typeof PASSKEY_PROBLEM;
