import { Hono } from "hono";
import { slipPlan } from "#shared/slip/slip-plan.ts";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { SlipReadingSchema } from "#shared/slip/slip-reading-schema.ts";
import { judge } from "#shared/triage/judge.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import { JudgedAnswers } from "#src/api/answers-body.ts";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { SlipPlanRequest } from "#src/api/triage-bodies.ts";
import { readJson } from "#src/http/read-json.ts";

/** Questions that are answered and forgotten: nothing is stored. */
export function triageRoutes({ shop }: Pick<ApiNeeds, "shop">) {
  return new Hono()
    .post("/triage", async (c) => {
      const body = await readJson(c.req.raw, JudgedAnswers);
      if (!body.ok) return body.refusal;
      const { onDate, ...answers } = body.value.value;
      const { triage } = (await shop.settings()).settings;
      return c.json({ ...judge(answers, onDate, triage), wouldChange: wouldChange(answers, onDate, triage) });
    })
    .post("/slip-plan", async (c) => {
      const body = await readJson(c.req.raw, SlipPlanRequest);
      if (!body.ok) return body.refusal;
      return c.json(slipPlan(body.value.value, (await shop.settings()).settings.slip));
    })
    .post("/slip-reading", async (c) => {
      const body = await readJson(c.req.raw, SlipReadingSchema);
      if (!body.ok) return body.refusal;
      return c.json(slipReading(body.value.value, (await shop.settings()).settings.slip));
    });
}
