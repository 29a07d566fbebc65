import { type Context, Hono } from "hono";
import { NO_PASSKEYS, PASSKEY_PROBLEM } from "#shared/messages/passkey-words.ts";
import { INVITE_PROBLEM } from "#shared/messages/shop-staff-words.ts";
import { readStaffName } from "#shared/shop/staff-account.ts";
import type { InviteLink } from "#shared/shop/staff-wishes.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { keepToken, newToken } from "#src/bench/session.ts";
import { LinkProblemPage } from "#src/bench/sign-in-pages.tsx";
import { labelOf } from "#src/bench/staff/account-routes.tsx";
import { checkNewPasskey } from "#src/bench/staff/check-passkey.ts";
import { readInvite } from "#src/bench/staff/invite-token.ts";
import { InvitedPage } from "#src/bench/staff/invited-page.tsx";
import { pageAddress } from "#src/bench/staff/page-address.ts";
import { readNewPasskey } from "#src/bench/staff/passkey-body.ts";
import { newChallenge, newPasskeyOptions } from "#src/bench/staff/passkey-options.ts";
import { passkeySite } from "#src/bench/staff/passkey-site.ts";
import { tooManyTriesAnswer } from "#src/bench/staff/too-many-tries.tsx";
import { problem } from "#src/http/problem.ts";
import { readForm } from "#src/http/read-form.ts";

type Why = keyof typeof INVITE_PROBLEM;
type FormProblem = { readonly field: "name" | "passkey"; readonly text: string };

/** Coming in by a link that a manager gave: a name, a passkey, and the device is signed in. */
export function inviteRoutes(needs: BenchNeeds) {
  const front = async () => (await needs.shop.settings()).settings.front;
  const refused = async (c: Context, why: Why) =>
    c.html(<LinkProblemPage front={await front()} problem={INVITE_PROBLEM[why]} />, 401);
  const form = async (c: Context, link: InviteLink, typed?: string, why?: FormProblem) => {
    const opened = await needs.shop.openInvitation(link);
    if (!opened.ok) return refused(c, opened.refusal.reason);
    const props = { front: await front(), at: pageAddress(c, needs), invitation: link.invitation };
    const more = { ...(typed !== undefined && { typed }), ...(why && { problem: why }) };
    return c.html(<InvitedPage {...props} invited={opened.value} {...more} />, why === undefined ? 200 : 422);
  };
  return new Hono()
    .get("/invite/:token", async (c) => {
      const link = await readInvite(needs, c.req.param("token"));
      if (link.ok) return form(c, link.value);
      return refused(c, link.refusal === "expired" ? "link-expired" : "link-not-ours");
    })
    .post("/invite/:token/options", async (c) => {
      const link = await readInvite(needs, c.req.param("token"));
      const site = passkeySite(needs.origin(c.req.raw));
      if (!site.ok) return problem({ status: 409, detail: NO_PASSKEYS[site.refusal] });
      if (!link.ok) return problem({ status: 401, detail: INVITE_PROBLEM["link-not-ours"] });
      const { name = "" } = await readForm(c);
      const challenge = newChallenge();
      const asked = await needs.shop.askInvited({
        link: link.value,
        challenge,
        source: await needs.sourceOf(c.req.raw),
      });
      if (!asked.ok) return problem({ status: 401, detail: INVITE_PROBLEM[asked.refusal.reason] });
      const { handle, known, staff } = asked.value;
      const holder = staff?.name ?? readStaffName(name);
      if (holder === null) return problem({ status: 422, detail: INVITE_PROBLEM["no-name"] });
      const { name: shopName } = await front();
      const { rpId } = site.value;
      return c.json(newPasskeyOptions({ challenge, rpId, shopName, holder: { handle, name: holder }, known }));
    })
    .post("/invite/:token", async (c) => {
      const link = await readInvite(needs, c.req.param("token"));
      if (!link.ok) {
        const counted = await needs.shop.failedSignIn(await needs.sourceOf(c.req.raw));
        if (!counted.ok) return tooManyTriesAnswer(c, needs, counted.refusal);
        return refused(c, link.refusal === "expired" ? "link-expired" : "link-not-ours");
      }
      const { response = "", label, name: typed = "" } = await readForm(c);
      const again = (why: FormProblem) => form(c, link.value, typed, why);
      const name = readStaffName(typed);
      if (name === null && link.value.invitation.to === "join")
        return again({ field: "name", text: INVITE_PROBLEM["no-name"] });
      const passkey = await newPasskeyIn(c, needs, link.value, response);
      if (!passkey.ok) return again({ field: "passkey", text: PASSKEY_PROBLEM[passkey.refusal] });
      const { token, sessionHash } = await newToken(needs);
      const wish = { link: link.value, name: name ?? "", passkey: passkey.value, label: labelOf(label), sessionHash };
      const joined = await needs.shop.join(wish);
      if (!joined.ok) {
        const { reason } = joined.refusal;
        if (reason === "name-taken") return again({ field: "name", text: INVITE_PROBLEM[reason] });
        return refused(c, reason);
      }
      await keepToken(c, needs, token, joined.value);
      return c.redirect("/shop", 303);
    });
}

async function newPasskeyIn(c: Context, needs: BenchNeeds, link: InviteLink, response: string) {
  const site = passkeySite(needs.origin(c.req.raw));
  const answer = readNewPasskey(response);
  if (!answer.ok || !site.ok) return { ok: false, refusal: "unreadable" } as const;
  const { challenge } = answer.value.client;
  if (!(await needs.shop.useInviteChallenge({ link, challenge })))
    return { ok: false, refusal: "challenge-ended" } as const;
  return checkNewPasskey(answer.value, site.value);
}
