import type { StaffRole } from "#shared/shop/staff.ts";
import type { StaffChangeRefusal, StaffEvent } from "#shared/shop/staff-account.ts";
import type { InviteRefusal, JoinRefusal } from "#shared/shop/staff-wishes.ts";

export const ROLE: Readonly<Record<StaffRole, string>> = { bench: "Bench", manager: "Manager" };

export const ROLE_SAYS: Readonly<Record<StaffRole, string>> = {
  bench: "Works on jobs.",
  manager: "Also changes settings and accounts, cancels, and gives owners new links.",
};

export const ACCOUNT = {
  title: "Your account",
  link: "Account",
  welcome: "You are signed in. Make a passkey now, so that you need no link the next time.",
  later: "Not now",
  is: (name: string, role: StaffRole) => `Signed in as ${name}, ${ROLE[role].toLowerCase()}`,
  name: "Your name",
  nameHint: "It stands beside all that you do to a job.",
  rename: "Save name",
  passkeys: "Your passkeys",
  noPasskeys: "You have none yet.",
  addTitle: "Make another passkey",
  firstTitle: "Make a passkey",
  devices: "Where you are signed in",
  thisDevice: "This device",
  otherDevice: "Another device",
  signOutOther: "Sign out there",
  signOutOthers: "Sign out everywhere else",
} as const;

export const PASSKEY_LIST = {
  added: (when: string) => `Added ${when}`,
  used: (when: string) => `last used ${when}`,
  unused: "not used yet",
  remove: "Remove",
  removeWhich: (label: string) => `Remove ${label}`,
} as const;

export const DEVICE = {
  opened: (when: string, passkey: string | null) =>
    `Signed in ${when} by ${passkey === null ? "a link" : `the passkey “${passkey}”`}`,
  seen: (when: string) => `last used ${when}`,
} as const;

export const STAFF = {
  title: "Staff",
  person: (name: string) => `Account of ${name}`,
  columns: { name: "Name", role: "Role", passkeys: "Passkeys", devices: "Signed in on" },
  left: (when: string) => `Left ${when}`,
  invite: "Invite somebody",
  inviteSays: "You get a link to hand over. It works once, within 24 hours.",
  role: "Role",
  inviteButton: "Make the link",
  history: "What was changed, and by whom",
  noHistory: "Nothing yet.",
  back: "All staff",
  rename: "Name",
  renameButton: "Save name",
  roleButton: "Save role",
  passkeys: "Passkeys",
  noPasskeys: "None.",
  devices: "Signed in on",
  noDevices: "No device.",
  signOutAll: "Sign out everywhere",
  linkTitle: "Lost every passkey?",
  linkSays: "A link lets this person make a new passkey for this account. It works once, within 24 hours.",
  endTitle: "End this account",
  endSays: "Whoever holds it is signed out at once and cannot sign in again. The name stays beside what was done.",
  endButton: "End the account",
} as const;

export const STAFF_DONE = {
  renamed: "The name is saved.",
  role: "The role is saved.",
  removed: "The passkey is removed.",
  added: "The passkey is added.",
  "signed-out": "Signed out there.",
  ended: "The account has ended.",
} as const;
export type StaffDone = keyof typeof STAFF_DONE;

export const STAFF_REFUSED: Readonly<Record<StaffChangeRefusal["reason"] | "no-name", string>> = {
  "no-such-account": "There is no such account any more.",
  "last-manager": "The shop needs a manager, and there is no other. Make somebody else one first.",
  "name-taken": "Somebody has or had that name. Histories tell people apart by name, so write another.",
  "no-name": "Write a name of 1 to 60 characters.",
};

export const NO_SUCH_ACCOUNT = { title: "No such account", says: "Nobody has that account." } as const;

export const INVITE_LINK = {
  title: "Hand this link over",
  says: "Open it on the phone, tablet or computer that will keep the passkey. It works once, within 24 hours, and is shown only here.",
  label: "Link",
  qr: "Code of the link",
} as const;

export const INVITED = {
  title: "Welcome to the shop",
  join: (role: StaffRole) => `You are invited as ${ROLE[role].toLowerCase()}. ${ROLE_SAYS[role]}`,
  back: (name: string) => `This link lets you make a new passkey, ${name}.`,
  name: "Your name",
  nameHint: "As it shall stand beside all that you do to a job.",
} as const;

export const INVITE_PROBLEM: Readonly<
  Record<InviteRefusal["reason"] | JoinRefusal["reason"] | "link-not-ours" | "no-name", string>
> = {
  "link-used": "This link has been used. A link works once.",
  "link-expired": "This link has ended. A link works for 24 hours.",
  "link-not-ours": "This is not a link of this shop. Part of it may be missing.",
  "inviter-left": "Who gave this link is not a manager here any more. Ask another one.",
  "no-such-account": "The account that this link is for has ended.",
  "name-taken": STAFF_REFUSED["name-taken"],
  "no-name": STAFF_REFUSED["no-name"],
  "passkey-known": "This passkey is known already.",
};

/** One line of the list of changes. @example staffEventText({ at: 0, staff: "Wren", what: "invited", about: "bench" }) // "Wren invited somebody to the bench" */
export function staffEventText({ staff, what, about }: StaffEvent): string {
  const who = staff ?? "The machine's link";
  switch (what) {
    case "first-account":
      return `The first account was made: ${about}`;
    case "signed-in-by-link":
      return `Signed in by a link of the machine: ${about}`;
    case "invited":
      return about === "manager" ? `${who} invited somebody as manager` : `${who} invited somebody to the bench`;
    case "invited-back":
      return `${who} gave ${about} a link to make a new passkey`;
    case "joined":
      return `${who} joined as ${about}`;
    case "renamed":
      return `${who} changed a name: ${about}`;
    case "role-changed":
      return `${who} changed a role: ${about}`;
    case "account-ended":
      return `${who} ended the account of ${about}`;
    case "passkey-added":
      return `${who} made a passkey: ${about}`;
    case "passkey-removed":
      return `${who} removed a passkey: ${about}`;
    case "devices-signed-out":
      return `${who} signed out devices of ${about}`;
    case "settings-saved":
      return `${who} saved the settings as version ${about}`;
  }
}
