import { Hono } from "hono";

/** A file that is named after its content, so that it may be kept for ever. */
export type Asset = { readonly name: string; readonly body: string };

const IMMUTABLE = "public, max-age=31536000, immutable";

/** Script and style sheet, each by its present name; an old name is not found. */
export function assetRoutes(assets: { readonly css: Asset; readonly script: Asset }) {
  const headers = (type: string) => ({ "content-type": `${type}; charset=utf-8`, "cache-control": IMMUTABLE });
  return new Hono()
    .get(`/${assets.css.name}`, (c) => c.body(assets.css.body, 200, headers("text/css")))
    .get(`/${assets.script.name}`, (c) => c.body(assets.script.body, 200, headers("text/javascript")));
}
