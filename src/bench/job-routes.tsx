import { Hono } from "hono";
import { JOB_DONE, type JobDone } from "#shared/messages/shop-job-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { cancelRoutes } from "#src/bench/cancel-routes.tsx";
import { type JobEnv, withJob } from "#src/bench/job-env.tsx";
import { JobPage } from "#src/bench/job-page.tsx";
import { linkRoutes } from "#src/bench/link-routes.tsx";
import { moveRoutes } from "#src/bench/move-routes.tsx";

/** One job: its page, and what can be done with it. */
export function jobRoutes(needs: BenchNeeds) {
  return new Hono<JobEnv>()
    .use("/:number/*", withJob(needs))
    .get("/:number", (c) =>
      c.html(<JobPage job={c.var.job} front={c.var.front} done={doneBefore(c.req.query("done"))} />),
    )
    .route("/", moveRoutes(needs))
    .route("/", cancelRoutes(needs))
    .route("/", linkRoutes(needs));
}

const doneBefore = (what: string | undefined): JobDone | undefined =>
  (Object.keys(JOB_DONE) as JobDone[]).find((known) => known === what);
