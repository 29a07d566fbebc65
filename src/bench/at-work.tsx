import type { MiddlewareHandler } from "hono";
import { type Child, createContext } from "hono/jsx";
import type { StaffAtWork, StaffVariables } from "#src/bench/session.ts";

/** Who looks at the page that is being written; null where nobody is signed in. */
export const AtWork = createContext<StaffAtWork | null>(null);

/** Lets every page after it know who looks, so that none has to hand it down to its frame. */
export const showToStaff: MiddlewareHandler<{ Variables: StaffVariables }> = async (c, next) => {
  const write = c.html;
  const writeFor = (page: Child, ...how: []) =>
    write((<AtWork.Provider value={c.var.staff}>{page}</AtWork.Provider>) as unknown as string, ...how);
  c.html = writeFor as typeof c.html;
  return next();
};
