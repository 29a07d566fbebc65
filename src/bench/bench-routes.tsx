import { Hono } from "hono";
import { arrivalsRoutes } from "#src/bench/arrivals-routes.tsx";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { callRoutes } from "#src/bench/caller/call-routes.tsx";
import { jobRoutes } from "#src/bench/job-routes.tsx";
import { type StaffVariables, staffOnly } from "#src/bench/session.ts";
import { settingsRoutes } from "#src/bench/settings/settings-routes.tsx";
import { NotSignedInPage } from "#src/bench/sign-in-pages.tsx";
import { signInRoutes } from "#src/bench/sign-in-routes.tsx";

/** The shop's pages, mounted at `/shop`. All but sign-in ask who is there. */
export function benchRoutes(needs: BenchNeeds) {
  const front = async () => (await needs.shop.settings()).settings.front;
  return new Hono<{ Variables: StaffVariables }>()
    .route("/", signInRoutes(needs))
    .use(staffOnly(needs, async (c) => c.html(<NotSignedInPage front={await front()} />, 401)))
    .route("/", arrivalsRoutes(needs))
    .route("/jobs", jobRoutes(needs))
    .route("/book", callRoutes(needs))
    .route("/settings", settingsRoutes(needs));
}
