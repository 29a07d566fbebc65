import { type Context, Hono } from "hono";
import { accept, refuse } from "#shared/basics/outcome.ts";
import { NO_PASSKEYS, PASSKEY_FORM, PASSKEY_PROBLEM, type PasskeyProblem } from "#shared/messages/passkey-words.ts";
import { STAFF_DONE, STAFF_REFUSED, type StaffDone } from "#shared/messages/shop-staff-words.ts";
import { readStaffName, type StaffChange } from "#shared/shop/staff-account.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { StaffVariables } from "#src/bench/session.ts";
import { AccountPage } from "#src/bench/staff/account-page.tsx";
import { checkNewPasskey } from "#src/bench/staff/check-passkey.ts";
import { pageAddress } from "#src/bench/staff/page-address.ts";
import { readNewPasskey } from "#src/bench/staff/passkey-body.ts";
import { newChallenge, newPasskeyOptions } from "#src/bench/staff/passkey-options.ts";
import { passkeySite } from "#src/bench/staff/passkey-site.ts";
import { problem } from "#src/http/problem.ts";
import { readForm } from "#src/http/read-form.ts";

type AccountEnv = { Variables: StaffVariables };
type Problem = { readonly field: "name" | "passkey"; readonly text: string; readonly typed?: string };

/** Everybody's own account. */
export function accountRoutes(needs: BenchNeeds) {
  const page = async (c: Context<AccountEnv>, status: 200 | 409 | 422 = 200, why?: Problem) => {
    const { id, hash } = c.var.staff;
    const [account, { settings }] = await Promise.all([needs.shop.account(id), needs.shop.settings()]);
    if (account === null) return c.redirect("/shop/sign-in", 303);
    const at = { ...pageAddress(c, needs), path: "/shop/sign-in" };
    const asked = { welcome: c.req.query("welcome") !== undefined, done: doneBefore(c.req.query("done")) };
    return c.html(
      <AccountPage {...{ account, settings, at, hash }} {...asked} {...(why && { problem: why })} />,
      status,
    );
  };
  const change = (c: Context<AccountEnv>, wish: StaffChange) =>
    needs.shop.changeStaff({ staff: c.var.staff.id, by: c.var.staff.name, change: wish });
  return new Hono<AccountEnv>()
    .get("/", (c) => page(c))
    .post("/rename", async (c) => {
      const { name: typed = "" } = await readForm(c);
      const name = readStaffName(typed);
      const renamed =
        name === null ? refuse({ reason: "no-name" as const }) : await change(c, { what: "rename", name });
      if (renamed.ok) return c.redirect("/shop/account?done=renamed", 303);
      return page(c, 422, { field: "name", text: STAFF_REFUSED[renamed.refusal.reason], typed });
    })
    .post("/passkey-options", async (c) => {
      const site = passkeySite(needs.origin(c.req.raw));
      if (!site.ok) return problem({ status: 409, detail: NO_PASSKEYS[site.refusal] });
      const challenge = newChallenge();
      const source = await needs.sourceOf(c.req.raw);
      const holder = await needs.shop.askForPasskey({ staff: c.var.staff.id, challenge, source });
      if (holder === null) return problem({ status: 409, detail: STAFF_REFUSED["no-such-account"] });
      const { front } = (await needs.shop.settings()).settings;
      const { known } = holder;
      return c.json(newPasskeyOptions({ challenge, rpId: site.value.rpId, shopName: front.name, holder, known }));
    })
    .post("/passkeys", async (c) => {
      const added = await addPasskey(c, needs);
      if (added.ok) return c.redirect("/shop/account?done=added", 303);
      const status = added.refusal === "passkey-known" ? 409 : 422;
      return page(c, status, { field: "passkey", text: PASSKEY_PROBLEM[added.refusal] });
    })
    .post("/passkeys/remove", async (c) => {
      const { passkey = "" } = await readForm(c);
      await change(c, { what: "remove-passkey", passkey });
      return c.redirect("/shop/account?done=removed", 303);
    })
    .post("/sign-out", async (c) => {
      const { device = "" } = await readForm(c);
      await change(c, { what: "sign-out", device });
      return c.redirect("/shop/account?done=signed-out", 303);
    })
    .post("/sign-out-others", async (c) => {
      await change(c, { what: "sign-out-all", but: c.var.staff.hash });
      return c.redirect("/shop/account?done=signed-out", 303);
    });
}

export const doneBefore = (what: string | undefined): StaffDone | undefined =>
  (Object.keys(STAFF_DONE) as StaffDone[]).find((known) => known === what);

/** As it was typed, cut to what the list can show. */
export const labelOf = (typed: string | undefined): string =>
  readStaffName(typed ?? "")?.slice(0, 40) ?? PASSKEY_FORM.labelDefault;

async function addPasskey(c: Context<AccountEnv>, needs: BenchNeeds) {
  const { response = "", label } = await readForm(c);
  const staff = c.var.staff.id;
  const site = passkeySite(needs.origin(c.req.raw));
  const answer = readNewPasskey(response);
  if (!answer.ok || !site.ok) return refuse<PasskeyProblem>("unreadable");
  const { challenge } = answer.value.client;
  if (!(await needs.shop.usePasskeyChallenge({ staff, challenge }))) return refuse<PasskeyProblem>("challenge-ended");
  const passkey = await checkNewPasskey(answer.value, site.value);
  if (!passkey.ok) return passkey;
  const added = await needs.shop.addPasskey({ staff, passkey: passkey.value, label: labelOf(label) });
  if (added.ok) return accept(null);
  return refuse<PasskeyProblem>(added.refusal.reason === "passkey-known" ? "passkey-known" : "no-such-passkey");
}
