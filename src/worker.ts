import type { Hono } from "hono";
import { siteOf } from "#src/site.ts";

export { ShopLedger } from "#src/shop-ledger.ts";

/** Built once for each isolate, with the bindings it has. */
const sites = new WeakMap<Env, Hono>();

export default {
  fetch(request, env, context) {
    const site = sites.get(env) ?? siteOf(env);
    sites.set(env, site);
    return site.fetch(request, env, context);
  },
} satisfies ExportedHandler<Env>;
