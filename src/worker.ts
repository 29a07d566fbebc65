import { Hono } from "hono";
import { CSS, SCRIPT } from "#build/assets.ts";

export { ShopLedger } from "#src/shop-ledger.ts";

const IMMUTABLE = "public, max-age=31536000, immutable";
const site = new Hono()
  .get("/healthz", (c) => c.json({ ok: true }))
  .get("/", (c) => c.html(`<!doctype html><title>Slipbench</title><link rel="stylesheet" href="/assets/${CSS.name}">`))
  .get(`/assets/${CSS.name}`, (c) => c.body(CSS.body, 200, { "content-type": "text/css", "cache-control": IMMUTABLE }))
  .get(`/assets/${SCRIPT.name}`, (c) =>
    c.body(SCRIPT.body, 200, { "content-type": "text/javascript", "cache-control": IMMUTABLE }),
  );

export default site;
