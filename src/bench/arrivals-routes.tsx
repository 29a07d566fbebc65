import { Hono } from "hono";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import { ArrivalsPage } from "#src/bench/arrivals-page.tsx";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";

/** The list of arrivals, and finding one job in it. */
export function arrivalsRoutes(needs: BenchNeeds) {
  const list = async () => {
    const [{ settings }, arrivals] = await Promise.all([needs.shop.settings(), needs.shop.arrivals()]);
    return { front: settings.front, arrivals, today: wallOf(settings.calendar.zone, needs.now()).date };
  };
  return new Hono()
    .get("/arrivals", async (c) => c.html(<ArrivalsPage {...(await list())} />))
    .get("/find", async (c) => {
      const typed = (c.req.query("number") ?? "").slice(0, 40);
      const read = readJobNumber(typed);
      if (read.ok && (await needs.shop.job(read.value)) !== null) return c.redirect(`/shop/jobs/${read.value}`, 303);
      const problem = read.ok ? "no-such-job" : read.refusal.reason;
      return c.html(<ArrivalsPage {...(await list())} notFound={{ typed, problem }} />, read.ok ? 404 : 422);
    });
}
