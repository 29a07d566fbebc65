import type { Context } from "hono";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { PageAddress } from "#src/bench/staff/passkey-form.tsx";

/** Where the page that is asked for lies, as the public writes it. */
export const pageAddress = (c: Context, needs: Pick<BenchNeeds, "origin">): PageAddress => ({
  origin: needs.origin(c.req.raw),
  path: c.req.path,
});

/** A page of the shop to go on to; anything else, such as another site's address, becomes the shop's first page. */
export const nextPage = (asked: string | undefined): string =>
  asked !== undefined && /^\/shop(?:[/?][\w\-./?=&%]*)?$/.test(asked) && !asked.includes("//") ? asked : "/shop";
