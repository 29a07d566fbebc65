import type { APIRequestContext } from "playwright-core";
import type { RunningShop } from "#tests/support/running-shop.ts";

/** Uses up the link that the start printed; one browser of a test file can be the shop's. */
export async function signIn(request: APIRequestContext, { origin, signInLink }: RunningShop): Promise<void> {
  const response = await request.post(signInLink, { headers: { origin } });
  if (!response.ok()) throw new Error(`Sign-in was refused with ${response.status()}.`);
}
