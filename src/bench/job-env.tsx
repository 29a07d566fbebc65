import type { MiddlewareHandler } from "hono";
import { NO_SUCH_JOB } from "#shared/messages/shop-job-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import type { BenchNeeds, OffersAsk } from "#src/bench/bench-needs.ts";
import type { StaffVariables } from "#src/bench/session.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

/** What every page of a job starts from. */
export type JobEnv = {
  Variables: StaffVariables & { readonly job: Job; readonly front: ShopSettings["front"] };
};

/** Loads the job that the address names; where there is none, that is the answer. */
export function withJob(needs: BenchNeeds): MiddlewareHandler<JobEnv, "/:number/*"> {
  return async (c, next) => {
    const number = readJobNumber(c.req.param("number"));
    const [job, { settings }] = await Promise.all([
      number.ok ? needs.shop.job(number.value) : null,
      needs.shop.settings(),
    ]);
    if (job === null) return c.html(<NoSuchJobPage front={settings.front} />, 404);
    c.set("job", job);
    c.set("front", settings.front);
    return next();
  };
}

/** In any other state the job's page is the answer: it says where the job stands. A form sent twice ends there too. */
export const onlyIn =
  (states: readonly JobState[]): MiddlewareHandler<JobEnv> =>
  async (c, next) =>
    states.includes(c.var.job.state) ? next() : c.redirect(`/shop/jobs/${c.var.job.number}`, 303);

/** Which bench time a job asks for: for the work that it is about now, and without the post once the unit is here. */
export const offersAsk = (job: Job): OffersAsk => ({ verdict: workVerdict(job), unitHere: job.state !== "booked" });

const workVerdict = ({ agreed, plan }: Job): Verdict => agreed?.work ?? plan.judgement.verdict;

const NoSuchJobPage = ({ front }: { readonly front: ShopSettings["front"] }) => (
  <ShopPage title={NO_SUCH_JOB.title} front={front}>
    <p>{NO_SUCH_JOB.says}</p>
    <p>
      <a href="/shop">{NO_SUCH_JOB.back}</a>
    </p>
  </ShopPage>
);
