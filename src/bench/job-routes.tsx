import { type Context, Hono } from "hono";
import { JOB_DONE, type JobDone } from "#shared/messages/shop-job-words.ts";
import { isButtonMove, MOVE_WORDS } from "#shared/messages/shop-move-words.ts";
import { askRoutes } from "#src/bench/approval/ask-routes.tsx";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { cancelRoutes } from "#src/bench/cancel-routes.tsx";
import { type JobEnv, withJob } from "#src/bench/job-env.tsx";
import type { RefusedMove } from "#src/bench/job-moves.tsx";
import { JobPage } from "#src/bench/job-page.tsx";
import { linkRoutes } from "#src/bench/link-routes.tsx";
import { moveRoutes } from "#src/bench/move-routes.tsx";
import { jobPartsRoutes } from "#src/bench/parts/job-parts-routes.tsx";
import { photoRoutes } from "#src/bench/photos/photo-routes.tsx";
import { recordRoutes } from "#src/bench/record/record-routes.tsx";
import { sheetRoutes } from "#src/bench/sheet/sheet-routes.tsx";
import { stateRoutes } from "#src/bench/state-routes.tsx";

/** One job: its page, and what can be done with it. */
export function jobRoutes(needs: BenchNeeds) {
  const showJob = async (c: Context<JobEnv>, refused?: RefusedMove) => {
    const { job, front } = c.var;
    const done = doneText(c.req.query("done"));
    const { shop, newId } = needs;
    const [parts, photos] = await Promise.all([shop.jobParts(job.number), shop.photos(job.number)]);
    const more = { parts: parts ?? [], photos, newId, now: needs.now() };
    return c.html(<JobPage job={job} front={front} {...more} done={done} refused={refused} />);
  };
  return new Hono<JobEnv>()
    .use("/:number/*", withJob(needs))
    .get("/:number", (c) => showJob(c))
    .route("/", stateRoutes(needs, showJob))
    .route("/", sheetRoutes(needs))
    .route("/", jobPartsRoutes(needs))
    .route("/", photoRoutes(needs))
    .route("/", recordRoutes(needs))
    .route("/", askRoutes(needs))
    .route("/", moveRoutes(needs))
    .route("/", cancelRoutes(needs))
    .route("/", linkRoutes(needs));
}

function doneText(what = ""): string | undefined {
  if (isButtonMove(what)) return MOVE_WORDS[what].done;
  return Object.hasOwn(JOB_DONE, what) ? JOB_DONE[what as JobDone] : undefined;
}
