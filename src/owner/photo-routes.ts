import { Hono } from "hono";
import { sha256Hex } from "#src/http/owner-link.ts";
import { photoAnswer } from "#src/http/photo-answer.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** Photos that the bench took of a job, for whoever has that job's link. */
export function photoRoutes({ shop, photoStore }: OwnerNeeds) {
  return new Hono().get("/tag/:token/photos/:id", async (c) => {
    const linkHash = await sha256Hex(c.req.param("token"));
    return photoAnswer(c, await shop.photoByLink({ linkHash, id: c.req.param("id") }), photoStore);
  });
}
