import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Invitation } from "#shared/shop/staff-account.ts";
import type { InviteLink } from "#shared/shop/staff-wishes.ts";
import { readToken, signToken, type TokenRefusal } from "#src/http/signed-token.ts";

const PURPOSE = "invite";
/** An invitation is answered within a day; default of this project. */
const INVITE_LIVES_MS = 24 * 3_600_000;

type SignNeeds = { readonly linkKey: string; readonly now: () => number; readonly newId: () => string };

/** The token of a link that a manager hands over: what it invites to and who gave it are under its signature. */
export const inviteToken = (
  { linkKey, now, newId }: SignNeeds,
  { invitation, inviter }: Pick<InviteLink, "invitation" | "inviter">,
): Promise<string> =>
  signToken(linkKey, {
    purpose: PURPOSE,
    nonce: `${invitation.to === "join" ? invitation.role : invitation.staff}.${inviter}.${newId()}`,
    expires: now() + INVITE_LIVES_MS,
  });

/** The link that a token stands for. */
export async function readInvite(
  { linkKey, now }: Pick<SignNeeds, "linkKey" | "now">,
  token: string,
): Promise<Outcome<InviteLink, TokenRefusal>> {
  const read = await readToken(linkKey, token, { purpose: PURPOSE, now: now() });
  if (!read.ok) return read;
  const { nonce, expires } = read.value;
  const [to = "", inviter = ""] = nonce.split(".");
  const invitation = invitationOf(to);
  if (invitation === null) return refuse("malformed");
  return accept({ nonce, nonceExpires: expires, invitation, inviter: Number(inviter) });
}

function invitationOf(to: string): Invitation | null {
  if (to === "bench" || to === "manager") return { to: "join", role: to };
  return /^\d+$/.test(to) ? { to: "come-back", staff: Number(to) } : null;
}
