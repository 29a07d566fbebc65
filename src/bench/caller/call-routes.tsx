import { Hono } from "hono";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { answersRoutes } from "#src/bench/caller/answers-routes.tsx";
import { type CallEnv, withCall } from "#src/bench/caller/call-env.tsx";
import { offersFor } from "#src/bench/caller/caller-call.ts";
import { CallerContactPage } from "#src/bench/caller/caller-contact-page.tsx";
import { CallerOffersPage } from "#src/bench/caller/caller-offers-page.tsx";
import { callerRefusedText } from "#src/bench/caller/caller-refused.ts";
import { holdForCall } from "#src/bench/caller/caller-wishes.ts";
import { confirmRoutes } from "#src/bench/caller/confirm-routes.tsx";
import { cancelledJob, contactThen } from "#src/bench/caller/unit-here.ts";
import { refusedStatus } from "#src/bench/change-refused.ts";
import { readForm } from "#src/http/read-form.ts";

/** Booking for a caller: answers, then the verdict with bench time, then who is calling. */
export function callRoutes(needs: BenchNeeds) {
  return new Hono<CallEnv>()
    .use("/:call/*", withCall(needs))
    .route("/", answersRoutes(needs))
    .get("/:call", async (c) => {
      const { call } = c.var;
      const { here } = call;
      if (!call.isComplete) return c.redirect(`/shop/book/${call.token}/answers${here.query}`, 303);
      const wish = needs.newId();
      if (call.hold !== null && c.req.query("other") === undefined) {
        const before = await cancelledJob(needs, here);
        const typed = before === null ? { country: call.settings.front.country } : contactThen(before);
        return c.html(<CallerContactPage call={call} hold={call.hold} offers={[]} typed={typed} wish={wish} />);
      }
      const offers = await needs.shop.offers(offersFor(call));
      return c.html(<CallerOffersPage call={call} offers={offers} wish={wish} />);
    })
    .post("/:call/hold", async (c) => {
      const { call, staff } = c.var;
      const { offer = "", wish = "" } = await readForm(c);
      const held = await holdForCall(needs, call, { offer, wish, source: staff.hash });
      if (held.ok) return c.redirect(`/shop/book/${call.token}${call.here.query}`, 303);
      const { refusal } = held;
      const offers = "offers" in refusal ? refusal.offers : await needs.shop.offers(offersFor(call));
      const page = { call, offers, wish: needs.newId(), problem: callerRefusedText(refusal) };
      return c.html(<CallerOffersPage {...page} />, refusedStatus(refusal));
    })
    .route("/", confirmRoutes(needs));
}
