import type { Context, MiddlewareHandler } from "hono";
import type { Staff } from "#shared/shop/staff.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { clearCookie, readCookie, writeCookie } from "#src/http/cookies.ts";
import { sha256Hex } from "#src/http/owner-link.ts";

type SessionNeeds = Pick<BenchNeeds, "shop" | "origin" | "now" | "newId">;

/** Lets signed-in staff through; everybody else gets the answer of `refuse`. */
export function staffOnly(
  needs: SessionNeeds,
  refuse: (c: Context) => Response | Promise<Response>,
): MiddlewareHandler<{ Variables: StaffVariables }> {
  return async (c, next) => {
    const staff = await staffOf(c, needs);
    if (staff === null) return refuse(c);
    c.set("staff", staff);
    return next();
  };
}

/** Who is at work on this device; `hash` names the session, whose open holds are counted together. */
export type StaffAtWork = Staff & { readonly hash: string };

/** What every page behind the sign-in knows. */
export type StaffVariables = { readonly staff: StaffAtWork };

/** Lets managers through; for an address that the table of permissions cannot tell apart from one of the bench's. */
export const managerOnly =
  (refuse: (c: Context) => Response | Promise<Response>): MiddlewareHandler<{ Variables: StaffVariables }> =>
  async (c, next) =>
    c.var.staff.role === "manager" ? next() : refuse(c);

/** Uses the link up and signs this device in. */
export async function signIn(c: Context, needs: SessionNeeds, link: { nonce: string; expires: number }) {
  const token = needs.newId();
  const sessionHash = await sha256Hex(token);
  const opened = await needs.shop.openSession({ nonce: link.nonce, nonceExpires: link.expires, sessionHash });
  if (opened.ok) {
    const seconds = Math.floor((opened.value.expiresAt - needs.now()) / 1000);
    writeCookie(c, "staff", token, { origin: needs.origin(c.req.raw), seconds });
  }
  return opened;
}

/** Ends the sign-in of this device, in the shop's object too. */
export async function signOut(c: Context, needs: SessionNeeds): Promise<void> {
  const origin = needs.origin(c.req.raw);
  const token = readCookie(c, "staff", origin);
  if (token !== undefined) await needs.shop.closeSession(await sha256Hex(token));
  clearCookie(c, "staff", origin);
}

async function staffOf(c: Context, needs: SessionNeeds): Promise<StaffAtWork | null> {
  const token = readCookie(c, "staff", needs.origin(c.req.raw));
  if (token === undefined) return null;
  const hash = await sha256Hex(token);
  const session = await needs.shop.session(hash);
  return session === null ? null : { ...session.staff, hash };
}
