import type { Context, MiddlewareHandler } from "hono";
import type { Staff } from "#shared/shop/staff.ts";
import type { OpenedSession } from "#shared/shop/staff-wishes.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { clearCookie, readCookie, writeCookie } from "#src/http/cookies.ts";
import { sha256Hex } from "#src/http/owner-link.ts";

type SessionNeeds = Pick<BenchNeeds, "shop" | "origin" | "now">;

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

/** A token for a device that is about to sign in; only its hash reaches the shop's object. */
export async function newToken(needs: Pick<BenchNeeds, "newId">) {
  const token = needs.newId();
  return { token, sessionHash: await sha256Hex(token) };
}

/** The shop's object knows the token now: keeps it on this device, in place of the one before, which ends. */
export async function keepToken(c: Context, needs: SessionNeeds, token: string, { expiresAt }: OpenedSession) {
  const origin = needs.origin(c.req.raw);
  const before = readCookie(c, "staff", origin);
  if (before !== undefined) await needs.shop.closeSession(await sha256Hex(before));
  writeCookie(c, "staff", token, { origin, seconds: Math.floor((expiresAt - needs.now()) / 1000) });
}

/** Ends the sign-in of this device, in the shop's object too. */
export async function signOut(c: Context, needs: SessionNeeds): Promise<void> {
  const origin = needs.origin(c.req.raw);
  const token = readCookie(c, "staff", origin);
  if (token !== undefined) await needs.shop.closeSession(await sha256Hex(token));
  clearCookie(c, "staff", origin);
}

/** Who of the staff this device is signed in as; null = nobody. */
export async function staffOf(c: Context, needs: SessionNeeds): Promise<StaffAtWork | null> {
  const token = readCookie(c, "staff", needs.origin(c.req.raw));
  if (token === undefined) return null;
  const hash = await sha256Hex(token);
  const session = await needs.shop.session(hash);
  return session === null ? null : { ...session.staff, hash };
}
