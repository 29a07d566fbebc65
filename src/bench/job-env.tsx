import type { MiddlewareHandler } from "hono";
import { NO_SUCH_JOB } from "#shared/messages/shop-job-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

/** What every page of a job starts from. */
export type JobEnv = { Variables: { readonly job: Job; readonly front: ShopSettings["front"] } };

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

/** A cancelled job is not changed any more; its page says so. A form sent twice ends there too. */
export const onlyBooked: MiddlewareHandler<JobEnv> = async (c, next) =>
  c.var.job.state === "booked" ? next() : c.redirect(`/shop/jobs/${c.var.job.number}`, 303);

const NoSuchJobPage = ({ front }: { readonly front: ShopSettings["front"] }) => (
  <ShopPage title={NO_SUCH_JOB.title} front={front}>
    <p>{NO_SUCH_JOB.says}</p>
    <p>
      <a href="/shop">{NO_SUCH_JOB.back}</a>
    </p>
  </ShopPage>
);
