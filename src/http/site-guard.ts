import type { Context, Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { methodNotAllowed } from "hono/method-not-allowed";
import { routePath } from "hono/route";
import { MOST_PHOTO_BYTES } from "#shared/job/photo.ts";
import { ERROR_WORDS } from "#shared/messages/error-words.ts";
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

/** No form and no request of ours comes near it, but for photos. */
const MOST_BODY_BYTES = 64 * 1024;
/** The photo itself, and the fields that come with it. */
const MOST_PHOTO_FORM_BYTES = MOST_PHOTO_BYTES + 16 * 1024;
const TAKES_PHOTOS = /^\/shop\/jobs\/[^/]+\/photos$/;

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
  const plain = bodyLimit({ maxSize: MOST_BODY_BYTES, onError: (c) => errorAnswer(c, TOO_LARGE) });
  const photo = bodyLimit({ maxSize: MOST_PHOTO_FORM_BYTES, onError: (c) => errorAnswer(c, PHOTO_TOO_LARGE) });
  site.use((c, next) => (TAKES_PHOTOS.test(c.req.path) ? photo(c, next) : plain(c, next)));
  const onMethodNotAllowed = (c: Context, methods: string[]) =>
    errorAnswer(c, { ...WRONG_METHOD, headers: { allow: methods.join(", ") } });
  site.use(methodNotAllowed({ app: site, onMethodNotAllowed }));
  site.notFound((c) => errorAnswer(c, NOT_FOUND));
  return site.onError((error, c) => {
    logFailure(error, `${c.req.method} ${routePath(c, -1)}`);
    return errorAnswer(c, FAILED);
  });
}

const NO_KEY = { status: 503, title: ERROR_WORDS.noKey.title, detail: ERROR_WORDS.noKey.detail(SHORTEST_KEY) } as const;
const TOO_MANY = { status: 429, ...ERROR_WORDS.tooMany } as const;
const CROSS_SITE = { status: 403, ...ERROR_WORDS.crossSite } as const;
const TOO_LARGE = { status: 413, ...ERROR_WORDS.tooLarge } as const;
const PHOTO_TOO_LARGE = { status: 413, ...ERROR_WORDS.photoTooLarge } as const;
const WRONG_METHOD = { status: 405, ...ERROR_WORDS.wrongMethod } as const;
const NOT_FOUND = { status: 404, ...ERROR_WORDS.notFound } as const;
const FAILED = { status: 500, ...ERROR_WORDS.failed } as const;
