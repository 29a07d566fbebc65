import { type Context, Hono } from "hono";
import { accept, refuse } from "#shared/basics/outcome.ts";
import { NO_PASSKEYS, PASSKEY_PROBLEM, type PasskeyProblem } from "#shared/messages/passkey-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { keepToken, newToken } from "#src/bench/session.ts";
import { SignInPage } from "#src/bench/sign-in-pages.tsx";
import { checkSigned } from "#src/bench/staff/check-passkey.ts";
import { nextPage, pageAddress } from "#src/bench/staff/page-address.ts";
import { readSigned } from "#src/bench/staff/passkey-body.ts";
import { newChallenge, signInOptions } from "#src/bench/staff/passkey-options.ts";
import { passkeySite } from "#src/bench/staff/passkey-site.ts";
import { tooManyTriesAnswer, tooManyTriesProblem } from "#src/bench/staff/too-many-tries.tsx";
import { problem } from "#src/http/problem.ts";
import { readForm } from "#src/http/read-form.ts";

/** Signing in with a passkey. */
export function passkeySignInRoutes(needs: BenchNeeds) {
  const page = async (c: Context, next?: string, why?: PasskeyProblem) => {
    const { front } = (await needs.shop.settings()).settings;
    const props = { front, at: { ...pageAddress(c, needs), path: "/shop/sign-in" }, next: nextPage(next) };
    const status = why === undefined ? 200 : why === "unreadable" ? 422 : 401;
    return c.html(<SignInPage {...props} problem={why && PASSKEY_PROBLEM[why]} />, status);
  };
  return new Hono()
    .get("/sign-in", (c) => page(c, c.req.query("next")))
    .post("/sign-in/options", async (c) => {
      const site = passkeySite(needs.origin(c.req.raw));
      if (!site.ok) return problem({ status: 409, detail: NO_PASSKEYS[site.refusal] });
      const challenge = newChallenge();
      const asked = await needs.shop.askToSignIn({ challenge, source: await needs.sourceOf(c.req.raw) });
      return asked.ok ? c.json(signInOptions(challenge, site.value.rpId)) : tooManyTriesProblem(needs, asked.refusal);
    })
    .post("/sign-in", async (c) => {
      const { response = "", next } = await readForm(c);
      const signed = await signIn(c, needs, response);
      if (signed.ok) return c.redirect(nextPage(next), 303);
      const { refusal } = signed;
      return typeof refusal === "string" ? page(c, next, refusal) : tooManyTriesAnswer(c, needs, refusal);
    });
}

/** Reads, counts, checks, opens. Each try is counted before its signature is looked at. */
async function signIn(c: Context, needs: BenchNeeds, response: string) {
  const source = await needs.sourceOf(c.req.raw);
  const site = passkeySite(needs.origin(c.req.raw));
  const answer = readSigned(response);
  if (!answer.ok || !site.ok) {
    const counted = await needs.shop.failedSignIn(source);
    return counted.ok ? refuse("unreadable" as const) : counted;
  }
  const { body, client } = answer.value;
  const began = await needs.shop.tryToSignIn({ challenge: client.challenge, source, passkey: body.id });
  if (!began.ok)
    return began.refusal.reason === "too-many-tries" ? refuse(began.refusal) : refuse(began.refusal.reason);
  const counter = await checkSigned(answer.value, began.value, site.value);
  if (!counter.ok) return counter;
  const { token, sessionHash } = await newToken(needs);
  const wish = { tryId: began.value.id, passkey: body.id, counter: counter.value, sessionHash };
  const opened = await needs.shop.signInByPasskey(wish);
  if (!opened.ok) return refuse(opened.refusal.reason);
  await keepToken(c, needs, token, opened.value);
  return accept(null);
}
