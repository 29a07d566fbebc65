import { type Context, Hono } from "hono";
import { nanoid } from "nanoid";
import * as assets from "#build/assets.ts";
import { logFailure } from "#src/adapters/log.ts";
import { r2PhotoStore } from "#src/adapters/photo-store.ts";
import { receiptReader } from "#src/adapters/receipts.ts";
import { SHOP_NAME, shopPort } from "#src/adapters/shop.ts";
import { boardReader } from "#src/adapters/slot-board.ts";
import { apiRoutes } from "#src/api/api-routes.ts";
import { benchRoutes } from "#src/bench/bench-routes.tsx";
import { staffOf } from "#src/bench/session.ts";
import { assetRoutes } from "#src/http/asset-routes.ts";
import { health } from "#src/http/health.ts";
import { publicOrigin } from "#src/http/public-origin.ts";
import { guardSite } from "#src/http/site-guard.ts";
import { sourceOf } from "#src/http/source-of.ts";
import { ownerRoutes } from "#src/owner/owner-routes.tsx";

/** The site map: who answers what, with what it needs of the world. */
export function siteOf(env: Env): Hono {
  const shop = shopPort(env);
  const world = {
    linkKey: env.LINK_KEY,
    now: () => Date.now(),
    newId: () => nanoid(22),
    photoStore: r2PhotoStore(env.PHOTOS),
    origin: (request: Request) => publicOrigin(request, env.PUBLIC_ORIGIN),
    sourceOf: (request: Request) => sourceOf(request, env.LINK_KEY),
  };
  const site = guardSite(new Hono(), { ...world, limiter: env.REQUEST_LIMIT, logFailure });
  site.get("/healthz", (c) => c.json(health()));
  site.route("/assets", assetRoutes(Object.values(assets)));
  const published = {
    publishedBoard: boardReader(env.BOARD, SHOP_NAME),
    publishedReceipt: receiptReader(env.BOARD),
  };
  const isStaff = async (c: Context) => (await staffOf(c, { ...world, shop })) !== null;
  site.route("/", ownerRoutes({ ...world, ...published, shop, isStaff }));
  site.route("/shop", benchRoutes({ ...world, shop }));
  site.route("/api", apiRoutes({ ...world, ...published, shop }));
  return site;
}
