import type { APIRequestContext } from "playwright-core";
import { keysOf } from "#src/local/keys.ts";
import { signInLink } from "#src/local/sign-in-link.ts";
import type { RunningShop } from "#tests/support/running-shop.ts";

/** A link that has not been used, as `npm run sign-in` prints it. */
export const newSignInLink = ({ origin, dataDir }: RunningShop): Promise<string> =>
  signInLink(origin, keysOf(dataDir).LINK_KEY);

/** Makes this browser the shop's. */
export async function signIn(request: APIRequestContext, shop: RunningShop): Promise<void> {
  const response = await request.post(await newSignInLink(shop), { headers: { origin: shop.origin } });
  if (!response.ok()) throw new Error(`Sign-in was refused with ${response.status()}.`);
}
