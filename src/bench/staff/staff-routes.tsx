import { type Context, Hono } from "hono";
import { NO_SUCH_ACCOUNT, STAFF, STAFF_REFUSED, type StaffDone } from "#shared/messages/shop-staff-words.ts";
import { STAFF_ROLES } from "#shared/shop/staff.ts";
import { type Invitation, readStaffName, type StaffAccount, type StaffChange } from "#shared/shop/staff-account.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { StaffVariables } from "#src/bench/session.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { doneBefore } from "#src/bench/staff/account-routes.tsx";
import { InviteLinkPage } from "#src/bench/staff/invite-link-page.tsx";
import { inviteToken } from "#src/bench/staff/invite-token.ts";
import { EndAccountPage, PersonPage } from "#src/bench/staff/person-page.tsx";
import { StaffPage } from "#src/bench/staff/staff-page.tsx";
import { readForm } from "#src/http/read-form.ts";

type PersonEnv = { Variables: StaffVariables & { readonly account: StaffAccount } };

/** Accounts, for managers. */
export function staffRoutes(needs: BenchNeeds) {
  const settings = async () => (await needs.shop.settings()).settings;
  const change = async (c: Context<PersonEnv>, wish: StaffChange, done: StaffDone, to = "") => {
    const { account, staff } = c.var;
    const changed = await needs.shop.changeStaff({ staff: account.id, by: staff.name, change: wish });
    if (changed.ok) return c.redirect(`/shop/staff${to}?done=${done}`, 303);
    const typed = wish.what === "rename" && { typed: wish.name };
    const problem = { text: STAFF_REFUSED[changed.refusal.reason], ...typed };
    return c.html(<PersonPage settings={await settings()} account={account} problem={problem} />, 409);
  };
  const invite = async (c: Context<PersonEnv>, invitation: Invitation) => {
    const { id, name } = c.var.staff;
    await needs.shop.noteInvitation({ by: name, invitation });
    const token = await inviteToken(needs, { invitation, inviter: id });
    const link = `${needs.origin(c.req.raw)}/shop/invite/${token}`;
    return c.html(<InviteLinkPage front={(await settings()).front} link={link} />);
  };
  return new Hono<PersonEnv>()
    .get("/", async (c) => {
      const [accounts, events] = await Promise.all([needs.shop.accounts(), needs.shop.staffEvents()]);
      const done = doneBefore(c.req.query("done"));
      return c.html(<StaffPage settings={await settings()} accounts={accounts} events={events} done={done} />);
    })
    .post("/invite", async (c) => invite(c, { to: "join", role: roleIn(await readForm(c)) }))
    .use("/:id/*", async (c, next) => {
      const id = c.req.param("id");
      const account = /^\d{1,9}$/.test(id) ? await needs.shop.account(Number(id)) : null;
      if (account === null || account.leftAt !== null)
        return c.html(<NoSuchAccountPage front={(await settings()).front} />, 404);
      c.set("account", account);
      return next();
    })
    .get("/:id", async (c) => {
      const done = doneBefore(c.req.query("done"));
      return c.html(<PersonPage settings={await settings()} account={c.var.account} done={done} />);
    })
    .post("/:id/rename", async (c) => {
      const { name: typed = "" } = await readForm(c);
      const name = readStaffName(typed);
      if (name !== null) return change(c, { what: "rename", name }, "renamed", `/${c.var.account.id}`);
      const problem = { text: STAFF_REFUSED["no-name"], typed };
      return c.html(<PersonPage settings={await settings()} account={c.var.account} problem={problem} />, 422);
    })
    .post("/:id/role", async (c) =>
      change(c, { what: "set-role", role: roleIn(await readForm(c)) }, "role", `/${c.var.account.id}`),
    )
    .post("/:id/link", (c) => invite(c, { to: "come-back", staff: c.var.account.id }))
    .post("/:id/sign-out-all", (c) => {
      const but = c.var.account.id === c.var.staff.id ? c.var.staff.hash : null;
      return change(c, { what: "sign-out-all", but }, "signed-out", `/${c.var.account.id}`);
    })
    .post("/:id/passkeys/remove", async (c) => {
      const { passkey = "" } = await readForm(c);
      return change(c, { what: "remove-passkey", passkey }, "removed", `/${c.var.account.id}`);
    })
    .get("/:id/end", async (c) => c.html(<EndAccountPage settings={await settings()} account={c.var.account} />))
    .post("/:id/end", (c) => change(c, { what: "end" }, "ended"));
}

/** What is not chosen, or no role, gets the least. */
const roleIn = ({ role: typed }: Readonly<Record<string, string>>) =>
  STAFF_ROLES.find((role) => role === typed) ?? "bench";

const NoSuchAccountPage = ({ front }: Pick<Parameters<typeof ShopPage>[0], "front">) => (
  <ShopPage title={NO_SUCH_ACCOUNT.title} front={front}>
    <p>{NO_SUCH_ACCOUNT.says}</p>
    <p>
      <a href="/shop/staff">{STAFF.back}</a>
    </p>
  </ShopPage>
);
