import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Staff } from "#shared/shop/staff.ts";
import type {
  InvitationNote,
  InviteChallenge,
  Invited,
  InviteLink,
  InviteRefusal,
  JoinRefusal,
  JoinWish,
  OpenedSession,
} from "#shared/shop/staff-wishes.ts";
import { keepChallenge, useChallenge } from "#src/ledger/challenge-rows.ts";
import { keepPasskey, passkeysOf } from "#src/ledger/passkey-rows.ts";
import { keepSession } from "#src/ledger/session-rows.ts";
import { noteStaffEvent } from "#src/ledger/staff-event-rows.ts";
import { addStaff, findStaff, isNameTaken } from "#src/ledger/staff-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";
import { isLinkUsed, useLink } from "#src/ledger/used-link-rows.ts";

/** Notes that a manager gave a link; the link itself is signed, not stored. */
export function noteInvitation({ sql, now }: Turn, { by, invitation }: InvitationNote): void {
  if (invitation.to === "join") noteStaffEvent(sql, { at: now, staff: by, what: "invited", about: invitation.role });
  else {
    const about = findStaff(sql, invitation.staff)?.name ?? null;
    noteStaffEvent(sql, { at: now, staff: by, what: "invited-back", about });
  }
}

/** Who is invited, as far as is known; a link of a manager who has gone is worth nothing. */
export function openInvitation({ sql, now }: Turn, link: InviteLink): Outcome<Invited, InviteRefusal> {
  if (link.nonceExpires <= now) return refuse({ reason: "link-expired" });
  if (isLinkUsed(sql, link.nonce)) return refuse({ reason: "link-used" });
  if (findStaff(sql, link.inviter)?.role !== "manager") return refuse({ reason: "inviter-left" });
  if (link.invitation.to === "join") return accept({ staff: null, handle: link.nonce, known: [] });
  const staff = findStaff(sql, link.invitation.staff);
  if (staff === null) return refuse({ reason: "no-such-account" });
  return accept({ staff, handle: staff.handle, known: passkeysOf(sql, staff.id).map(({ id }) => id) });
}

/** Sets a challenge for the passkey of who was invited. */
export function askInvited(
  turn: Turn,
  { link, challenge, source }: InviteChallenge & { readonly source: string },
): Outcome<Invited, InviteRefusal> {
  const invited = openInvitation(turn, link);
  if (invited.ok) keepChallenge(turn, { challenge, purpose: "add-passkey", handle: invited.value.handle, source });
  return invited;
}

/** Uses up the challenge of an invitation's passkey, before its answer is checked. */
export function useInviteChallenge(turn: Turn, { link, challenge }: InviteChallenge): boolean {
  const invited = openInvitation(turn, link);
  return invited.ok && useChallenge(turn, { challenge, purpose: "add-passkey", handle: invited.value.handle });
}

/** The passkey was checked: makes the account where it is new, keeps the passkey, and signs the device in. */
export function join(
  turn: Turn,
  { link, name, passkey, label, sessionHash }: JoinWish,
): Outcome<OpenedSession, JoinRefusal> {
  const { sql, now } = turn;
  const invited = openInvitation(turn, link);
  if (!invited.ok) return invited;
  if (invited.value.staff === null && isNameTaken(sql, name, null)) return refuse({ reason: "name-taken" });
  const staff = invited.value.staff ?? addInvited(turn, link, name);
  if (staff === null) return refuse({ reason: "no-such-account" });
  if (!keepPasskey(sql, passkey, { staff: staff.id, label, now })) return refuse({ reason: "passkey-known" });
  useLink(sql, link.nonce, link.nonceExpires);
  noteStaffEvent(sql, { at: now, staff: staff.name, what: "passkey-added", about: label });
  return accept(keepSession(turn, { hash: sessionHash, staff: staff.id, passkey: passkey.id }));
}

function addInvited({ sql, now }: Turn, { nonce, invitation }: InviteLink, name: string): Staff | null {
  if (invitation.to !== "join") return null;
  const staff = addStaff(sql, { handle: nonce, name, role: invitation.role }, now);
  noteStaffEvent(sql, { at: now, staff: name, what: "joined", about: invitation.role });
  return staff;
}
