import type { MiddlewareHandler } from "hono";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { type Call, callOf } from "#src/bench/caller/caller-call.ts";
import type { StaffVariables } from "#src/bench/session.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

/** What every page of a call starts from. */
export type CallEnv = { Variables: StaffVariables & { readonly call: Call } };

/** Loads the call that the address names; one that has ended is the answer. */
export function withCall(needs: BenchNeeds): MiddlewareHandler<CallEnv> {
  return async (c, next) => {
    const call = await callOf(c, needs);
    if (call === null) return c.html(<GonePage front={(await needs.shop.settings()).settings.front} />, 404);
    c.set("call", call);
    return next();
  };
}

const GonePage = ({ front }: { readonly front: ShopSettings["front"] }) => (
  <ShopPage title={CALLER.gone} front={front}>
    <p>{CALLER.goneSays}</p>
    <p class="actions">
      <a class="button" href="/shop/book">
        {CALLER.startAgain}
      </a>
    </p>
  </ShopPage>
);
