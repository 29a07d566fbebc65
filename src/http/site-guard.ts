import type { Context, Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { methodNotAllowed } from "hono/method-not-allowed";
import { routePath } from "hono/route";
import { crossSiteGuard } from "#src/http/cross-site.ts";
import { errorAnswer } from "#src/http/error-answer.ts";
import { requestLimit } from "#src/http/request-limit.ts";
import { siteHeaders } from "#src/http/secure-headers.ts";
import { SHORTEST_KEY } from "#src/http/signed-token.ts";
import { sourceOf } from "#src/http/source-of.ts";

/** What stands between the world and the routes. */
export type GuardNeeds = {
  readonly origin: (request: Request) => string;
  /** `undefined` or short where the secret was not set. */
  readonly linkKey: string | undefined;
  readonly limiter: Pick<RateLimit, "limit"> | undefined;
  /** Told the route's pattern, never the address: addresses hold keys. */
  readonly logFailure: (error: Error, at: string) => void;
};

/** No form and no request of ours comes near it. */
const MOST_BODY_BYTES = 64 * 1024;

/** What every request passes first, and what is said where no route answers or one fails. Call it before the routes. */
export function guardSite(site: Hono, { origin, linkKey = "", limiter, logFailure }: GuardNeeds): Hono {
  site.use(siteHeaders(origin));
  site.use(async (c, next) => (linkKey.length < SHORTEST_KEY ? errorAnswer(c, NO_KEY) : next()));
  site.use(
    requestLimit({
      limiter,
      sourceOf: (request) => sourceOf(request, linkKey),
      isFree: (path) => path === "/healthz" || path.startsWith("/assets/"),
      refuse: (c, headers) => errorAnswer(c, { ...TOO_MANY, headers }),
    }),
  );
  site.use(crossSiteGuard({ origin, refuse: (c) => errorAnswer(c, CROSS_SITE) }));
  site.use(bodyLimit({ maxSize: MOST_BODY_BYTES, onError: (c) => errorAnswer(c, TOO_LARGE) }));
  const onMethodNotAllowed = (c: Context, methods: string[]) =>
    errorAnswer(c, { ...WRONG_METHOD, headers: { allow: methods.join(", ") } });
  site.use(methodNotAllowed({ app: site, onMethodNotAllowed }));
  site.notFound((c) => errorAnswer(c, NOT_FOUND));
  return site.onError((error, c) => {
    logFailure(error, `${c.req.method} ${routePath(c, -1)}`);
    return errorAnswer(c, FAILED);
  });
}

const NO_KEY = {
  status: 503,
  detail: `This server cannot sign links: its LINK_KEY is missing or has fewer than ${SHORTEST_KEY} characters.`,
} as const;
const TOO_MANY = { status: 429, detail: "Too many requests. Wait a minute, then go on." } as const;
const CROSS_SITE = { status: 403, detail: "This was sent from another site, so it was not accepted." } as const;
const TOO_LARGE = { status: 413, detail: "That is more than 64 KiB, which is all that is accepted." } as const;
const WRONG_METHOD = { status: 405, detail: "This address does not answer that method." } as const;
const NOT_FOUND = { status: 404, detail: "There is nothing at this address." } as const;
const FAILED = { status: 500, detail: "Something went wrong here. Please try again." } as const;
