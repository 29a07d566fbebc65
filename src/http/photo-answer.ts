import type { Context } from "hono";
import type { Photo } from "#shared/job/photo.ts";
import type { PhotoStore } from "#src/http/photo-store.ts";

/**
 * A photo as an answer, of the type that its bytes have. A browser may keep it for whoever is signed in, but asks each
 * time whether it is still there, so that a removed photo is gone for everybody at once.
 * @param photo null where the asker may not see it; that it is there, or was, is not told
 */
export async function photoAnswer(c: Context, photo: Photo | null, store: PhotoStore | null): Promise<Response> {
  if (photo === null || store === null) return c.notFound();
  const headers = { "cache-control": "private, no-cache", etag: `"${photo.sha256}"` };
  if (c.req.header("if-none-match") === headers.etag) return c.body(null, 304, headers);
  const body = await store.read(photo.id);
  if (body === null) return c.notFound();
  return c.body(body, 200, {
    ...headers,
    "content-type": photo.type,
    "content-length": String(photo.bytes),
    "content-disposition": "inline",
  });
}
