import { type Context, Hono } from "hono";
import { recordThatCounts } from "#shared/job/record-standing.ts";
import { SHOP_RECORD as WORDS } from "#shared/messages/shop-record-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { JobEnv } from "#src/bench/job-env.tsx";
import { readCorrection } from "#src/bench/record/correction-fields.ts";
import { RecordPage } from "#src/bench/record/record-page.tsx";
import { readForm } from "#src/http/read-form.ts";

/** A job's service record. Only a manager corrects one; permissions.ts says so. */
export function recordRoutes(needs: BenchNeeds) {
  const PATH = "/:number/record";
  return new Hono<JobEnv>()
    .get(PATH, async (c) => {
      const notice = c.req.query("done") === "corrected" ? WORDS.done : undefined;
      return c.html(<RecordPage {...(await pageOf(c, needs))} notice={notice} />);
    })
    .post(`${PATH}/correct`, async (c) => {
      const page = await pageOf(c, needs);
      const counts = recordThatCounts(page.view.entries);
      const { ifHash = "", ...fields } = await readForm(c);
      if (counts === null || counts.hash !== ifHash)
        return c.html(<RecordPage {...page} problem={WORDS.changed} />, 409);
      const read = readCorrection(fields, counts.record.service);
      if (!read.ok) return c.html(<RecordPage {...page} typed={{ fields, problems: read.refusal }} />, 422);
      const { number } = c.var.job;
      const corrected = await needs.shop.correctRecord({ number, ifHash, staff: c.var.staff.name, ...read.value });
      if (corrected.ok) return c.redirect(`/shop/jobs/${number}/record?done=corrected`, 303);
      return c.html(<RecordPage {...(await pageOf(c, needs))} problem={WORDS.changed} />, 409);
    });
}

async function pageOf(c: Context<JobEnv>, { shop, origin }: BenchNeeds) {
  const { job, front, staff } = c.var;
  const view = (await shop.record(job.number)) ?? { entries: [], services: [] };
  return { job, front, view, origin: origin(c.req.raw), mayCorrect: staff.role === "manager" };
}
