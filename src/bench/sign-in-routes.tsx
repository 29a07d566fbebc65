import { type Context, Hono } from "hono";
import { unreachable } from "#shared/basics/unreachable.ts";
import { SIGN_IN_PROBLEM, type SignInProblem } from "#shared/messages/shop-sign-in-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { keepToken, newToken, signOut } from "#src/bench/session.ts";
import { LinkProblemPage, LinkSignInPage, SignedOutPage } from "#src/bench/sign-in-pages.tsx";
import { pageAddress } from "#src/bench/staff/page-address.ts";
import { tooManyTriesAnswer } from "#src/bench/staff/too-many-tries.tsx";
import { readToken, type TokenRefusal } from "#src/http/signed-token.ts";

const PURPOSE = "sign-in";

/** Using a sign-in link of the machine, and leaving. */
export function signInRoutes(needs: BenchNeeds) {
  const front = async () => (await needs.shop.settings()).settings.front;
  const read = (token: string) => readToken(needs.linkKey, token, { purpose: PURPOSE, now: needs.now() });
  const refused = async (c: Context, problem: SignInProblem) =>
    c.html(<LinkProblemPage front={await front()} problem={SIGN_IN_PROBLEM[problem]} />, 401);
  return new Hono()
    .get("/sign-in/:token", async (c) => {
      const link = await read(c.req.param("token"));
      return link.ok ? c.html(<LinkSignInPage front={await front()} />) : refused(c, problemOf(link.refusal));
    })
    .post("/sign-in/:token", async (c) => {
      const source = await needs.sourceOf(c.req.raw);
      const link = await read(c.req.param("token"));
      if (!link.ok) {
        const counted = await needs.shop.failedSignIn(source);
        return counted.ok ? refused(c, problemOf(link.refusal)) : tooManyTriesAnswer(c, needs, counted.refusal);
      }
      const { token, sessionHash } = await newToken(needs);
      const { nonce, expires } = link.value;
      const opened = await needs.shop.openSession({ nonce, nonceExpires: expires, sessionHash, source });
      if (!opened.ok) {
        const { refusal } = opened;
        if (refusal.reason === "too-many-tries") return tooManyTriesAnswer(c, needs, refusal);
        return refused(c, refusal.reason);
      }
      await keepToken(c, needs, token, opened.value);
      return c.redirect("/shop/account?welcome", 303);
    })
    .post("/sign-out", async (c) => {
      await signOut(c, needs);
      return c.redirect("/shop/signed-out", 303);
    })
    .get("/signed-out", async (c) => c.html(<SignedOutPage front={await front()} at={pageAddress(c, needs)} />));
}

function problemOf(refusal: TokenRefusal): SignInProblem {
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
