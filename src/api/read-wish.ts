import type * as z from "zod";
import { accept, type Outcome } from "#shared/basics/outcome.ts";
import type { WishKey } from "#shared/shop/booking.ts";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { wrongByShop } from "#src/api/wrong-by-shop.ts";
import { readWishKey } from "#src/http/idempotency.ts";
import { readJson } from "#src/http/read-json.ts";
import { sourceOf } from "#src/http/source-of.ts";

/** A request that changes something: what it asks for, who asks, and the name by which a repeat of it is known. */
export type ReadWish<Value> = { readonly asked: Value; readonly source: string; readonly wishKey: WishKey };

/** Within what a key names one wish only. A repeat must come to the same scope, from wherever it is sent. */
type Scope<Value> = (asked: Value, source: string) => string;

export async function readWish<Schema extends z.ZodType>(
  request: Request,
  schema: Schema,
  { scope, ...needs }: Pick<ApiNeeds, "shop" | "linkKey" | "now"> & { readonly scope: Scope<z.output<Schema>> },
): Promise<Outcome<ReadWish<z.output<Schema>>, Response>> {
  const body = await readJson(request, schema, (input) => wrongByShop(input, needs));
  if (!body.ok) return body;
  const source = await sourceOf(request, needs.linkKey);
  const wishKey = await readWishKey(request, body.value.text, scope(body.value.value, source));
  return wishKey.ok ? accept({ asked: body.value.value, source, wishKey: wishKey.value }) : wishKey;
}
