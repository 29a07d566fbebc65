import type { Context, MiddlewareHandler } from "hono";

/** The window of the binding, and so the longest wait. */
const RETRY_AFTER_SECONDS = "60";

/** How requests are counted; without a limiter there is no limit. */
export type RequestLimitNeeds = {
  readonly limiter: Pick<RateLimit, "limit"> | undefined;
  readonly sourceOf: (request: Request) => Promise<string>;
  readonly isFree: (path: string) => boolean;
  readonly refuse: (c: Context, headers: Readonly<Record<string, string>>) => Response | Promise<Response>;
};

/** A cheap front shield. The exact caps are the shop's own, counted in its object. */
export function requestLimit({ limiter, sourceOf, isFree, refuse }: RequestLimitNeeds): MiddlewareHandler {
  return async (c, next) => {
    if (limiter === undefined || isFree(c.req.path)) return next();
    const { success } = await limiter.limit({ key: await sourceOf(c.req.raw) });
    return success ? next() : refuse(c, { "retry-after": RETRY_AFTER_SECONDS });
  };
}
