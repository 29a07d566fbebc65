import { Hono } from "hono";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { changeAnswer, MoveRequest } from "#src/api/booking-bodies.ts";
import { changeRefused } from "#src/api/wish-refused.ts";
import { bearerToken } from "#src/http/bearer.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import { problem } from "#src/http/problem.ts";
import { readJson } from "#src/http/read-json.ts";

/** A booking moved or cancelled by its owner, who shows the token of the owner's link. */
export function changeRoutes({ shop }: Pick<ApiNeeds, "shop">) {
  return new Hono()
    .patch("/bookings/:id", async (c) => {
      const token = bearerToken(c.req.raw);
      if (token === null) return tokenNeeded();
      const body = await readJson(c.req.raw, MoveRequest);
      if (!body.ok) return body.refusal;
      const wish = { booking: c.req.param("id"), linkHash: await sha256Hex(token), by: "owner" } as const;
      const moved = await shop.moveBooking({ ...wish, offer: body.value.value.slot });
      return moved.ok ? c.json(changeAnswer(moved.value)) : changeRefused(moved.refusal);
    })
    .delete("/bookings/:id", async (c) => {
      const token = bearerToken(c.req.raw);
      if (token === null) return tokenNeeded();
      const wish = { booking: c.req.param("id"), linkHash: await sha256Hex(token), by: "owner" } as const;
      const cancelled = await shop.cancelBooking(wish);
      return cancelled.ok ? c.json(changeAnswer(cancelled.value)) : changeRefused(cancelled.refusal);
    });
}

const tokenNeeded = (): Response =>
  problem({
    status: 401,
    detail: "Send the owner's token of this booking as a bearer token.",
    headers: { "www-authenticate": "Bearer" },
  });
