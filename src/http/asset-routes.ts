import { Hono } from "hono";

/** A file that is named after its content, so that it may be kept for ever. */
export type Asset = { readonly name: string; readonly body: string };

const IMMUTABLE = "public, max-age=31536000, immutable";

/** Scripts and style sheets, each by its present name; an old name is not found. */
export function assetRoutes(assets: readonly Asset[]) {
  return new Hono().get("/:name", (c) => {
    const asset = assets.find(({ name }) => name === c.req.param("name"));
    if (asset === undefined) return c.notFound();
    const type = asset.name.endsWith(".css") ? "text/css" : "text/javascript";
    return c.body(asset.body, 200, { "content-type": `${type}; charset=utf-8`, "cache-control": IMMUTABLE });
  });
}
