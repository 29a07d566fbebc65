import { Hono } from "hono";
import type { Offer } from "#shared/calendar/find-offers.ts";
import { DateText } from "#shared/craft/answers-schema.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { MovePage } from "#src/bench/change-pages.tsx";
import { changeRefusedText, refusedStatus } from "#src/bench/change-refused.ts";
import { type JobEnv, onlyBooked } from "#src/bench/job-env.tsx";
import { readForm } from "#src/http/read-form.ts";

/** Moving a booking to another bench time. */
export function moveRoutes(needs: BenchNeeds) {
  const PATH = "/:number/move";
  return new Hono<JobEnv>()
    .use(PATH, onlyBooked)
    .get(PATH, async (c) => {
      const { job, front } = c.var;
      const from = readFrom(c.req.query("from"));
      const { verdict } = job.plan.judgement;
      const offers = await needs.shop.offers(
        from.isDate && from.typed !== "" ? { verdict, from: from.typed } : { verdict },
      );
      return c.html(<MovePage job={job} front={front} offers={offers} from={from} />, from.isDate ? 200 : 422);
    })
    .post(PATH, async (c) => {
      const { job, front } = c.var;
      const { offer = "" } = await readForm(c);
      const moved = await needs.shop.moveBooking({ booking: job.booking.id, linkHash: "", offer, by: "shop" });
      if (moved.ok) return c.redirect(`/shop/jobs/${job.number}?done=moved`, 303);
      const offers: readonly Offer[] = "offers" in moved.refusal ? moved.refusal.offers : [];
      const page = { job, front, offers, from: ANY_DAY, problem: changeRefusedText(moved.refusal) };
      return c.html(<MovePage {...page} />, refusedStatus(moved.refusal));
    });
}

const ANY_DAY = { typed: "", isDate: true };

/** Left empty = as soon as may be. */
const readFrom = (typed = "") => ({ typed, isDate: typed === "" || DateText.safeParse(typed).success });
