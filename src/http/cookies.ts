import type { Context } from "hono";
import { deleteCookie, getCookie, setCookie } from "hono/cookie";
import { isHttps } from "#src/http/public-origin.ts";

/** `draft` holds an owner's conversation, `staff` a sign-in of the shop. */
export type CookieName = "draft" | "staff";

/** An owner comes from a link in a text message, which a Strict cookie would not follow. */
const SAME_SITE = { draft: "Lax", staff: "Strict" } as const;

/** On https the name carries `__Host-`, so no other host and no insecure page can set it. */
export function readCookie(c: Context, name: CookieName, origin: string): string | undefined {
  return isHttps(origin) ? getCookie(c, name, "host") : getCookie(c, name);
}

export function writeCookie(c: Context, name: CookieName, value: string, how: { origin: string; seconds: number }) {
  setCookie(c, name, value, { ...attributes(name, how.origin), maxAge: how.seconds });
}

export function clearCookie(c: Context, name: CookieName, origin: string) {
  deleteCookie(c, name, attributes(name, origin));
}

function attributes(name: CookieName, origin: string) {
  const base = { path: "/", httpOnly: true, sameSite: SAME_SITE[name] } as const;
  return isHttps(origin) ? ({ ...base, secure: true, prefix: "host" } as const) : base;
}
