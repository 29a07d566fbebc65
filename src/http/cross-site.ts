import type { Context, MiddlewareHandler } from "hono";

const SAFE_METHODS: readonly string[] = ["GET", "HEAD", "OPTIONS"];

/** How the guard says no, and which origin is ours. */
export type CrossSiteNeeds = {
  readonly origin: (request: Request) => string;
  readonly refuse: (c: Context) => Response | Promise<Response>;
};

/**
 * Refuses whatever another site's page sends by a method that changes things, of any content type.
 * Fetch Metadata first, the Origin header where a browser sends no metadata (plain http). A client that sends neither
 * is not a browser, so it carries nobody's cookies but its own.
 */
export function crossSiteGuard({ origin, refuse }: CrossSiteNeeds): MiddlewareHandler {
  return async (c, next) => {
    if (SAFE_METHODS.includes(c.req.method) || isOurs(c.req.raw, origin(c.req.raw))) return next();
    return refuse(c);
  };
}

function isOurs({ headers }: Request, ours: string): boolean {
  const fetchSite = headers.get("sec-fetch-site");
  if (fetchSite !== null) return fetchSite === "same-origin" || fetchSite === "none";
  return (headers.get("origin") ?? ours) === ours;
}
