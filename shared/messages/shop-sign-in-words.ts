/** Why a sign-in link does not open the shop. */
export type SignInProblem = "link-expired" | "link-used" | "link-not-ours";

/** Too many failed from one source. */
export const tooManyTries = (minutes: number): string =>
  `Too many sign-ins failed from here. Wait ${minutes} ${minutes === 1 ? "minute" : "minutes"}, then try again.`;

export const SIGN_IN = {
  title: "Sign in to the shop",
  asks: "This link signs you in on this device as the first manager. It works once.",
  button: "Sign in",
} as const;

export const SIGN_IN_PROBLEM: Readonly<Record<SignInProblem, string>> = {
  "link-expired": "This sign-in link has ended. A link works for 10 minutes.",
  "link-used": "This sign-in link has been used. A link works once.",
  "link-not-ours": "This is not a sign-in link of this shop. Part of it may be missing.",
};

/** The page that everybody signs in on. */
export const SIGN_IN_PAGE = { title: "Sign in" } as const;

/** Said to those whose role does not reach. */
export const MANAGERS_ONLY = {
  title: "For managers",
  says: "This page is for managers of the shop. Ask one of them, or to be made one.",
  back: "Back to the shop",
} as const;

/** Said wherever somebody is not signed in: the command, and where to type it. */
export const HOW_TO_SIGN_IN = {
  before:
    "When all passkeys are lost, or there is none yet: open a terminal on the computer that runs the shop and type",
  command: "npm run sign-in",
  after: "Then open the link that it prints.",
} as const;

export const NOT_SIGNED_IN = {
  title: "Not signed in",
  withoutPasskey: "Without a passkey",
  askManager: "If you work here, ask a manager for a link: they find it under Staff.",
  says: "This page is for the shop. You are not signed in on this device, or your sign-in has ended.",
} as const;

export const SIGN_OUT = {
  button: "Sign out",
  title: "Signed out",
  says: "You are signed out on this device.",
} as const;
