import { Hono } from "hono";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import { DAY } from "#shared/messages/shop-day-words.ts";
import { isButtonMove, MOVE_WORDS } from "#shared/messages/shop-move-words.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { DayPage } from "#src/bench/day/day-page.tsx";

/** The shop's first page. */
export function dayRoutes({ shop, now }: Pick<BenchNeeds, "shop" | "now">) {
  return new Hono().get("/", async (c) => {
    const [{ settings }, jobs] = await Promise.all([shop.settings(), shop.daySheet()]);
    const { front, calendar } = settings;
    const today = wallOf(calendar.zone, now()).date;
    const done = doneText(c.req.query("job"), c.req.query("done"));
    return c.html(<DayPage front={front} jobs={jobs} today={today} now={now()} done={done} />);
  });
}

/** Said once after a move from this page. */
function doneText(job = "", move = ""): string | undefined {
  const number = readJobNumber(job);
  return number.ok && isButtonMove(move) ? DAY.done(number.value, MOVE_WORDS[move].done) : undefined;
}
