import { Hono } from "hono";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { bookingRoutes } from "#src/api/booking-routes.ts";
import { changeRoutes } from "#src/api/change-routes.ts";
import { holdRoutes } from "#src/api/hold-routes.ts";
import { openapiDocument } from "#src/api/openapi.ts";
import { slotRoutes } from "#src/api/slot-routes.ts";
import { triageRoutes } from "#src/api/triage-routes.ts";

/** The JSON interface, one file a resource. */
export function apiRoutes(needs: ApiNeeds) {
  return new Hono()
    .route("/", triageRoutes(needs))
    .route("/", slotRoutes(needs))
    .route("/", holdRoutes(needs))
    .route("/", bookingRoutes(needs))
    .route("/", changeRoutes(needs))
    .get("/openapi.json", (c) => c.json(openapiDocument(), 200, { "cache-control": "public, max-age=300" }));
}
