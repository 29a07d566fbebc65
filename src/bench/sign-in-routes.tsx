import { Hono } from "hono";
import { unreachable } from "#shared/basics/unreachable.ts";
import type { SignInProblem } from "#shared/messages/shop-sign-in-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { signIn, signOut } from "#src/bench/session.ts";
import { SignedOutPage, SignInPage, SignInProblemPage } from "#src/bench/sign-in-pages.tsx";
import { readToken, type TokenRefusal } from "#src/http/signed-token.ts";

const PURPOSE = "sign-in";

/** What anybody may reach: using a sign-in link, and leaving. */
export function signInRoutes(needs: BenchNeeds) {
  const front = async () => (await needs.shop.settings()).settings.front;
  const read = (token: string) => readToken(needs.linkKey, token, { purpose: PURPOSE, now: needs.now() });
  return new Hono()
    .get("/sign-in/:token", async (c) => {
      const link = await read(c.req.param("token"));
      if (link.ok) return c.html(<SignInPage front={await front()} />);
      return c.html(<SignInProblemPage front={await front()} problem={problemOf(link.refusal)} />, 401);
    })
    .post("/sign-in/:token", async (c) => {
      const link = await read(c.req.param("token"));
      const opened = link.ok ? await signIn(c, needs, link.value) : link;
      if (opened.ok) return c.redirect("/shop", 303);
      return c.html(<SignInProblemPage front={await front()} problem={problemOf(opened.refusal)} />, 401);
    })
    .post("/sign-out", async (c) => {
      await signOut(c, needs);
      return c.redirect("/shop/signed-out", 303);
    })
    .get("/signed-out", async (c) => c.html(<SignedOutPage front={await front()} />));
}

type Refusal = TokenRefusal | { readonly reason: "link-used" | "link-expired" };

function problemOf(refusal: Refusal): SignInProblem {
  if (typeof refusal === "object") return refusal.reason;
  switch (refusal) {
    case "expired":
      return "link-expired";
    case "malformed":
    case "not-ours":
    case "other-purpose":
      return "link-not-ours";
    default:
      return unreachable(refusal);
  }
}
