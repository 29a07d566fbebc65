/** Why a sign-in link does not open the shop. */
export type SignInProblem = "link-expired" | "link-used" | "link-not-ours";

export const SIGN_IN = {
  title: "Sign in to the shop",
  asks: "This link signs you in on this device for 14 days. It works once.",
  button: "Sign in",
} as const;

export const SIGN_IN_PROBLEM: Readonly<Record<SignInProblem, string>> = {
  "link-expired": "This sign-in link has ended. A link works for 10 minutes.",
  "link-used": "This sign-in link has been used. A link works once.",
  "link-not-ours": "This is not a sign-in link of this shop. Part of it may be missing.",
};

/** Said wherever somebody is not signed in: the command, and where to type it. */
export const HOW_TO_SIGN_IN = {
  before: "To make a new link, open a terminal on the computer that runs the shop and type",
  command: "npm run sign-in",
  after: "Then open the link that it prints.",
} as const;

export const NOT_SIGNED_IN = {
  title: "Not signed in",
  says: "This page is for the shop. You are not signed in on this device, or your sign-in has ended.",
} as const;

export const SIGN_OUT = {
  button: "Sign out",
  title: "Signed out",
  says: "You are signed out on this device.",
} as const;
