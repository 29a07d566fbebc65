import type { Outcome } from "#shared/basics/outcome.ts";
import type { StaffAccount, StaffChangeRefusal, StaffEvent } from "#shared/shop/staff-account.ts";
import type * as staff from "#shared/shop/staff-wishes.ts";

/** What signing in and the accounts ask of the shop's object. */
export type StaffShop = {
  readonly openSession: (wish: staff.LinkSignInWish) => Promise<Outcome<staff.OpenedSession, staff.LinkSignInRefusal>>;
  /** Counts a sign-in that failed before the object was asked; the outcome says whether another may follow. */
  readonly failedSignIn: (source: string) => Promise<Outcome<unknown, staff.TooManyTries>>;
  readonly askToSignIn: (wish: staff.AskToSignIn) => Promise<Outcome<unknown, staff.TooManyTries>>;
  readonly tryToSignIn: (wish: staff.TryToSignIn) => Promise<Outcome<staff.SignInTry, staff.SignInRefusal>>;
  readonly signInByPasskey: (
    wish: staff.CheckedSignIn,
  ) => Promise<Outcome<staff.OpenedSession, { readonly reason: "no-such-passkey" }>>;
  readonly askForPasskey: (wish: staff.AskForPasskey) => Promise<staff.PasskeyHolder | null>;
  readonly usePasskeyChallenge: (wish: { readonly staff: number; readonly challenge: string }) => Promise<boolean>;
  readonly addPasskey: (wish: staff.PasskeyWish) => Promise<Outcome<unknown, staff.PasskeyRefusal>>;
  readonly noteInvitation: (wish: staff.InvitationNote) => Promise<void>;
  readonly openInvitation: (link: staff.InviteLink) => Promise<Outcome<staff.Invited, staff.InviteRefusal>>;
  readonly askInvited: (
    wish: staff.InviteChallenge & { readonly source: string },
  ) => Promise<Outcome<staff.Invited, staff.InviteRefusal>>;
  readonly useInviteChallenge: (wish: staff.InviteChallenge) => Promise<boolean>;
  readonly join: (wish: staff.JoinWish) => Promise<Outcome<staff.OpenedSession, staff.JoinRefusal>>;
  readonly accounts: () => Promise<readonly StaffAccount[]>;
  readonly account: (id: number) => Promise<StaffAccount | null>;
  readonly changeStaff: (wish: staff.StaffWish) => Promise<Outcome<StaffAccount, StaffChangeRefusal>>;
  readonly staffEvents: () => Promise<readonly StaffEvent[]>;
};
