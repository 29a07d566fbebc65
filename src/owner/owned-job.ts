import type { Context } from "hono";
import type { Job } from "#shared/shop/booking.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

export const tokenOf = (c: Context): string => c.req.param("token") ?? "";

export const linkHashOf = (c: Context): Promise<string> => sha256Hex(tokenOf(c));

/** The job that the address is the key of; null = of none. Such a page is never kept by anything on the way. */
export async function ownedJob(c: Context, { shop }: OwnerNeeds): Promise<Job | null> {
  c.header("cache-control", "no-store");
  return shop.jobByLink(await linkHashOf(c));
}
