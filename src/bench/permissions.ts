import type { MiddlewareHandler } from "hono";
import { matchedRoutes } from "hono/route";
import type { StaffRole } from "#shared/shop/staff.ts";
import type { StaffVariables } from "#src/bench/session.ts";

/**
 * The least role for each address behind the sign-in, and the one place that says so; an address that is not here is
 * for managers. The bench does all the work on jobs. What costs the shop its word, its money or its safety is for
 * managers: settings and accounts, giving up a booking, a new key to an owner's job, and correcting a service record.
 */
export const LEAST_ROLE: Readonly<Record<string, StaffRole>> = {
  "/shop": "bench",
  "/shop/find": "bench",
  "/shop/arrivals": "bench",
  "/shop/receive": "bench",
  "/shop/receive/find": "bench",
  "/shop/receive/:number": "bench",
  "/shop/account": "bench",
  "/shop/account/rename": "bench",
  "/shop/account/passkey-options": "bench",
  "/shop/account/passkeys": "bench",
  "/shop/account/passkeys/remove": "bench",
  "/shop/account/sign-out": "bench",
  "/shop/account/sign-out-others": "bench",
  "/shop/book": "bench",
  "/shop/book/:call": "bench",
  "/shop/book/:call/answers": "bench",
  "/shop/book/:call/hold": "bench",
  "/shop/book/:call/confirm": "bench",
  "/shop/jobs/:number": "bench",
  "/shop/jobs/:number/state": "bench",
  "/shop/jobs/:number/undo": "bench",
  "/shop/jobs/:number/sheet": "bench",
  "/shop/jobs/:number/sheet/offline.js": "bench",
  "/shop/jobs/:number/sheet/:step": "bench",
  "/shop/jobs/:number/approval": "bench",
  "/shop/jobs/:number/approval/reply": "bench",
  "/shop/jobs/:number/approval/withdraw": "bench",
  "/shop/jobs/:number/parts/use": "bench",
  "/shop/jobs/:number/parts/take-back": "bench",
  "/shop/jobs/:number/parts/add": "bench",
  "/shop/jobs/:number/parts/put-away": "bench",
  "/shop/jobs/:number/photos": "bench",
  "/shop/jobs/:number/photos/:id": "bench",
  "/shop/jobs/:number/photos/:id/remove": "bench",
  "/shop/jobs/:number/move": "bench",
  "/shop/jobs/:number/cancel": "manager",
  "/shop/jobs/:number/link": "manager",
  // Shown to whoever booked for a caller, too; the address itself is signed and ends within minutes.
  "/shop/jobs/:number/link/:pass": "bench",
  "/shop/jobs/:number/record": "bench",
  "/shop/jobs/:number/record/correct": "manager",
  "/shop/records": "manager",
  "/shop/records.jsonl": "manager",
  "/shop/rise": "bench",
  "/shop/parts": "bench",
  "/shop/parts/order": "bench",
  "/shop/parts/:part/:family": "bench",
  "/shop/parts/:part/:family/receive": "bench",
  "/shop/parts/:part/:family/count": "bench",
  "/shop/settings": "manager",
  "/shop/staff": "manager",
  "/shop/staff/invite": "manager",
  "/shop/staff/:id": "manager",
  "/shop/staff/:id/rename": "manager",
  "/shop/staff/:id/role": "manager",
  "/shop/staff/:id/link": "manager",
  "/shop/staff/:id/end": "manager",
  "/shop/staff/:id/sign-out-all": "manager",
  "/shop/staff/:id/passkeys/remove": "manager",
};

/** Whether a role reaches an address, by its pattern. */
export const mayReach = (role: StaffRole, pattern: string): boolean =>
  role === "manager" || LEAST_ROLE[pattern] === "bench";

/** Lets through whose role reaches every route that could answer; what is no route goes on to be not found. */
export function byPermission(refuse: MiddlewareHandler): MiddlewareHandler<{ Variables: StaffVariables }> {
  return async (c, next) => {
    const routes = matchedRoutes(c).filter(({ method }) => method !== "ALL");
    return routes.every(({ path }) => mayReach(c.var.staff.role, path)) ? next() : refuse(c, next);
  };
}
