import { Hono } from "hono";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { CancelPage } from "#src/bench/change-pages.tsx";
import { changeRefusedText } from "#src/bench/change-refused.ts";
import { type JobEnv, onlyIn } from "#src/bench/job-env.tsx";

/** Cancelling a booking, asked once more before it is done. */
export function cancelRoutes(needs: BenchNeeds) {
  const PATH = "/:number/cancel";
  return new Hono<JobEnv>()
    .use(PATH, onlyIn(["booked"]))
    .get(PATH, (c) => c.html(<CancelPage job={c.var.job} front={c.var.front} />))
    .post(PATH, async (c) => {
      const { job, front, staff } = c.var;
      const cancelled = await needs.shop.cancelBooking({
        booking: job.booking.id,
        linkHash: "",
        by: "shop",
        staff: staff.name,
      });
      if (cancelled.ok) return c.redirect(`/shop/jobs/${job.number}?done=cancelled`, 303);
      return c.html(<CancelPage job={job} front={front} problem={changeRefusedText(cancelled.refusal)} />, 409);
    });
}
