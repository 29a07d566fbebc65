import type { Context, MiddlewareHandler } from "hono";
import { secureHeaders } from "hono/secure-headers";
import { isHttps } from "#src/http/public-origin.ts";

const COMMON: Parameters<typeof secureHeaders>[0] = {
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    imgSrc: ["'self'", "data:"],
    connectSrc: ["'self'"],
    formAction: ["'self'"],
    baseUri: ["'none'"],
    objectSrc: ["'none'"],
    frameAncestors: ["'none'"],
  },
  xFrameOptions: "DENY",
  // "no-referrer" would make a browser send `Origin: null` with a form, and the cross-site guard refuse it.
  referrerPolicy: "same-origin",
};

/** Nothing of the device is asked for, but where a page says so. */
const NO_DEVICE = "camera=(), microphone=(), geolocation=(), display-capture=()";
const CAMERA = NO_DEVICE.replace("camera=()", "camera=(self)");

/** For a page that reads with the camera. */
export const allowCamera = (c: Context): void => c.header("permissions-policy", CAMERA);

const TWO_YEARS = "max-age=63072000; includeSubDomains";
const overHttp = secureHeaders({ ...COMMON, strictTransportSecurity: false });
const overHttps = secureHeaders({ ...COMMON, strictTransportSecurity: TWO_YEARS });

/** Headers of every answer. Nothing is cached that does not ask for it: most pages show one owner's business. */
export function siteHeaders(origin: (request: Request) => string): MiddlewareHandler {
  return async (c, next) => {
    await (isHttps(origin(c.req.raw)) ? overHttps : overHttp)(c, next);
    if (!c.res.headers.has("permissions-policy")) c.res.headers.set("permissions-policy", NO_DEVICE);
    if (!c.res.headers.has("cache-control")) c.res.headers.set("cache-control", "no-store");
  };
}
