import { Hono } from "hono";
import { busyOf } from "#shared/calendar/board-schema.ts";
import { findOffers } from "#shared/calendar/find-offers.ts";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { offerAnswer, SlotsQuery } from "#src/api/slot-bodies.ts";
import { checkInput } from "#src/http/check-input.ts";

/** Free bench time, from the published board where that is fresh enough, else from the shop itself. */
export function slotRoutes({ shop, publishedBoard, now }: Pick<ApiNeeds, "shop" | "publishedBoard" | "now">) {
  return new Hono().get("/slots", async (c) => {
    const query = checkInput(SlotsQuery, c.req.query());
    if (!query.ok) return query.refusal;
    const { verdict, from } = query.value;
    const asked = { verdict, now: now(), ...(from === undefined ? {} : { from }) };
    const board = (await publishedBoard(asked.now)) ?? (await shop.board());
    const offers = findOffers({ settings: board.settings, busy: busyOf(board), ...asked });
    const ageSeconds = Math.max(0, Math.floor((asked.now - board.generatedAt) / 1000));
    return c.json({ offers: offers.map(offerAnswer), board: { version: board.version, ageSeconds } });
  });
}
