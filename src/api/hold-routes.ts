import { Hono } from "hono";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { HoldRequest, holdAnswer } from "#src/api/hold-bodies.ts";
import { readWish } from "#src/api/read-wish.ts";
import { holdRefused } from "#src/api/wish-refused.ts";

/** Bench time kept for a caller for some minutes. */
export function holdRoutes(needs: Pick<ApiNeeds, "shop" | "newId" | "linkKey" | "now">) {
  const { shop, newId } = needs;
  return new Hono().post("/holds", async (c) => {
    const wish = await readWish(c.req.raw, HoldRequest, { ...needs, scope: scopeOf });
    if (!wish.ok) return wish.refusal;
    const { asked, source, wishKey } = wish.value;
    const { slot: offer, verdict, answers = null } = asked;
    const held = await shop.hold({ id: newId(), offer, verdict, answers, source, draft: null, wishKey });
    return held.ok ? c.json(holdAnswer(held.value), 201) : holdRefused(held.refusal);
  });
}

/** Before there is a hold, nothing but the address tells callers apart: their keys may be the same. */
const scopeOf = (_: unknown, source: string): string => `POST /api/holds ${source}`;
