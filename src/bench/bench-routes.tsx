import { type Context, Hono } from "hono";
import { arrivalsRoutes } from "#src/bench/arrivals-routes.tsx";
import { showToStaff } from "#src/bench/at-work.tsx";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { callRoutes } from "#src/bench/caller/call-routes.tsx";
import { dayRoutes } from "#src/bench/day/day-routes.tsx";
import { jobRoutes } from "#src/bench/job-routes.tsx";
import { stockRoutes } from "#src/bench/parts/stock-routes.tsx";
import { byPermission } from "#src/bench/permissions.ts";
import { receiveRoutes } from "#src/bench/receive/receive-routes.tsx";
import { chainRoutes } from "#src/bench/record/chain-routes.tsx";
import { riseRoutes } from "#src/bench/record/rise-routes.tsx";
import { type StaffVariables, staffOnly } from "#src/bench/session.ts";
import { settingsRoutes } from "#src/bench/settings/settings-routes.tsx";
import { ManagersOnlyPage, NotSignedInPage } from "#src/bench/sign-in-pages.tsx";
import { signInRoutes } from "#src/bench/sign-in-routes.tsx";
import { accountRoutes } from "#src/bench/staff/account-routes.tsx";
import { inviteRoutes } from "#src/bench/staff/invite-routes.tsx";
import { nextPage, pageAddress } from "#src/bench/staff/page-address.ts";
import { passkeySignInRoutes } from "#src/bench/staff/passkey-sign-in-routes.tsx";
import { staffRoutes } from "#src/bench/staff/staff-routes.tsx";

/** The shop's pages, mounted at `/shop`. All but sign-in ask who is there. */
export function benchRoutes(needs: BenchNeeds) {
  const front = async () => (await needs.shop.settings()).settings.front;
  const notSignedIn = async (c: Context) => {
    const { pathname, search } = new URL(c.req.url);
    const next = nextPage(c.req.method === "GET" ? `${pathname}${search}` : undefined);
    return c.html(<NotSignedInPage front={await front()} at={pageAddress(c, needs)} next={next} />, 401);
  };
  return new Hono<{ Variables: StaffVariables }>()
    .route("/", passkeySignInRoutes(needs))
    .route("/", signInRoutes(needs))
    .route("/", inviteRoutes(needs))
    .use(staffOnly(needs, notSignedIn))
    .use(showToStaff)
    .use(byPermission(async (c) => c.html(<ManagersOnlyPage front={await front()} />, 403)))
    .route("/", dayRoutes(needs))
    .route("/", arrivalsRoutes(needs))
    .route("/receive", receiveRoutes(needs))
    .route("/jobs", jobRoutes(needs))
    .route("/", chainRoutes(needs))
    .route("/", riseRoutes(needs))
    .route("/book", callRoutes(needs))
    .route("/parts", stockRoutes(needs))
    .route("/settings", settingsRoutes(needs))
    .route("/account", accountRoutes(needs))
    .route("/staff", staffRoutes(needs));
}
