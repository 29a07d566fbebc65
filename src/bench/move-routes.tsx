import { Hono } from "hono";
import type { Offer } from "#shared/calendar/find-offers.ts";
import { DateText } from "#shared/craft/answers-schema.ts";
import { type OffTime, RECEIVED_OFF_TIME } from "#shared/messages/shop-change-words.ts";
import { BENCH_TO_COME } from "#shared/shop/job-state.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { MovePage } from "#src/bench/change-pages.tsx";
import { changeRefusedText, refusedStatus } from "#src/bench/change-refused.ts";
import { type JobEnv, offersAsk, onlyIn } from "#src/bench/job-env.tsx";
import { readForm } from "#src/http/read-form.ts";

/** Moving a job to another bench time: before its unit has come, and while work on it is to come. */
export function moveRoutes(needs: BenchNeeds) {
  const PATH = "/:number/move";
  return new Hono<JobEnv>()
    .use(PATH, onlyIn(BENCH_TO_COME))
    .get(PATH, async (c) => {
      const { job, front } = c.var;
      const from = readFrom(c.req.query("from"));
      const ask = offersAsk(job);
      const offers = await needs.shop.offers(from.isDate && from.typed !== "" ? { ...ask, from: from.typed } : ask);
      const received = OFF_TIMES.find((known) => known === c.req.query("received"));
      const page = { job, front, offers, from, received };
      return c.html(<MovePage {...page} />, from.isDate ? 200 : 422);
    })
    .post(PATH, async (c) => {
      const { job, front, staff } = c.var;
      const { offer = "" } = await readForm(c);
      const wish = { booking: job.booking.id, linkHash: "", by: "shop", staff: staff.name } as const;
      const moved = await needs.shop.moveBooking({ ...wish, offer });
      if (moved.ok) return c.redirect(`/shop/jobs/${job.number}?done=moved`, 303);
      const offers: readonly Offer[] = "offers" in moved.refusal ? moved.refusal.offers : [];
      const page = { job, front, offers, from: ANY_DAY, problem: changeRefusedText(moved.refusal) };
      return c.html(<MovePage {...page} />, refusedStatus(moved.refusal));
    });
}

const OFF_TIMES = Object.keys(RECEIVED_OFF_TIME) as OffTime[];

const ANY_DAY = { typed: "", isDate: true };

/** Left empty = as soon as may be. */
const readFrom = (typed = "") => ({ typed, isDate: typed === "" || DateText.safeParse(typed).success });
