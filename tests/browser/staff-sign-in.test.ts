import type { BrowserContextOptions, Page } from "playwright-core";
import { expect, it } from "vitest";
import { NO_PASSKEYS, PASSKEY_FORM, PASSKEY_PROBLEM, PASSKEY_TROUBLE } from "#shared/messages/passkey-words.ts";
import { SETTINGS } from "#shared/messages/shop-settings-words.ts";
import { MANAGERS_ONLY, NOT_SIGNED_IN, SIGN_IN, SIGN_OUT } from "#shared/messages/shop-sign-in-words.ts";
import { ACCOUNT, INVITE_LINK, INVITED, PASSKEY_LIST, STAFF, STAFF_DONE } from "#shared/messages/shop-staff-words.ts";
import { SHOP_NAV } from "#shared/messages/shop-words.ts";
import { keysOf } from "#src/local/keys.ts";
import { byName, signInLink } from "#src/local/sign-in-link.ts";
import { giveAuthenticator } from "#tests/browser/an-authenticator.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();
const TABLET = { width: 820, height: 1180 };

it("a manager makes a passkey, comes back with it and invites a bench person, who sees no settings", async () => {
  const manager = await aPerson();
  const { see, found } = looking();
  await manager.goto(await namedLink());
  await see(manager, SIGN_IN.asks);
  await manager.getByRole("button", { name: SIGN_IN.button }).click();
  await see(manager, ACCOUNT.welcome);
  await manager.getByLabel(PASSKEY_FORM.label).fill("Office computer");
  await manager.getByRole("button", { name: PASSKEY_FORM.add }).click();
  await see(manager, STAFF_DONE.added);
  await manager.getByText("Office computer").waitFor();
  // The same device does not make a second one.
  await manager.getByRole("button", { name: PASSKEY_FORM.add }).click();
  await manager.getByRole("alert").filter({ hasText: PASSKEY_TROUBLE.known }).waitFor();

  await manager.getByRole("button", { name: SIGN_OUT.button, exact: true }).click();
  await see(manager, SIGN_OUT.says);
  await manager.goto(`${at()}/shop/staff`);
  await see(manager, NOT_SIGNED_IN.says);
  await manager.getByRole("button", { name: PASSKEY_FORM.signIn }).click();
  await see(manager, STAFF.inviteSays);
  expect(new URL(manager.url()).pathname).toBe("/shop/staff");

  await manager.getByRole("radio", { name: "Bench" }).check();
  await manager.getByRole("button", { name: STAFF.inviteButton }).click();
  await see(manager, INVITE_LINK.says);
  const link = await manager.getByRole("textbox").inputValue();

  const bench = await aPerson({ viewport: TABLET });
  await bench.goto(link);
  await see(bench, INVITED.join("bench"));
  await bench.getByLabel(INVITED.name).fill("Tansy Marl");
  await bench.getByRole("button", { name: PASSKEY_FORM.add }).click();
  const nav = bench.getByRole("navigation", { name: SHOP_NAV });
  await nav.waitFor();
  expect(await nav.getByRole("link", { name: SETTINGS.title }).count()).toBe(0);
  expect(await nav.getByRole("link", { name: STAFF.title }).count()).toBe(0);
  for (const path of ["settings", "staff"]) {
    await bench.goto(`${at()}/shop/${path}`);
    await see(bench, MANAGERS_ONLY.says);
  }

  await manager.goto(`${at()}/shop/staff`);
  await see(manager, "Tansy Marl joined as bench");
  await manager.getByRole("link", { name: "Tansy Marl" }).click();
  await see(manager, STAFF.linkSays);
  await manager.getByRole("link", { name: STAFF.endTitle }).click();
  await see(manager, STAFF.endSays);
  await manager.getByRole("button", { name: STAFF.endButton }).click();
  await see(manager, STAFF_DONE.ended);
  await bench.goto(`${at()}/shop`);
  await see(bench, NOT_SIGNED_IN.says);
  await bench.getByRole("button", { name: PASSKEY_FORM.signIn }).click();
  await see(bench, PASSKEY_PROBLEM["no-such-passkey"]);
  expect(found()).toEqual([]);
});

it("says what stands in the way: a numeric address, no passkey on the device, no network, a browser without passkeys", async () => {
  const numeric = await aPerson();
  await numeric.goto(`${shop().origin}/shop/sign-in`);
  await numeric.getByText(NO_PASSKEYS["numeric-address"]).waitFor();
  await numeric.getByRole("link", { name: at() }).click();
  await numeric.getByRole("button", { name: PASSKEY_FORM.signIn }).click();
  const trouble = numeric.getByRole("alert");
  await trouble.filter({ hasText: PASSKEY_TROUBLE.stopped }).waitFor();
  await numeric.context().setOffline(true);
  await numeric.getByRole("button", { name: PASSKEY_FORM.signIn }).click();
  await trouble.filter({ hasText: PASSKEY_TROUBLE.offline }).waitFor();

  const old = await aPerson();
  await old.addInitScript("delete window.PublicKeyCredential");
  await old.goto(`${at()}/shop/sign-in`);
  await old.getByRole("button", { name: PASSKEY_FORM.signIn }).click();
  await old.getByRole("alert").filter({ hasText: PASSKEY_TROUBLE.unsupported }).waitFor();

  const { context } = await somebody({ javaScriptEnabled: false });
  const plain = await context.newPage();
  await plain.goto(`${at()}/shop/sign-in`);
  await plain.locator("noscript p").waitFor();
});

it("works in a browser that neither reads nor writes the JSON forms of passkeys", async () => {
  const page = await aPerson();
  await page.addInitScript(() => {
    Object.assign(PublicKeyCredential, {
      parseCreationOptionsFromJSON: undefined,
      parseRequestOptionsFromJSON: undefined,
    });
    Object.assign(PublicKeyCredential.prototype, { toJSON: undefined });
  });
  await page.goto(await namedLink());
  await page.getByRole("button", { name: SIGN_IN.button }).click();
  await page.getByRole("button", { name: PASSKEY_FORM.add }).click();
  await page.getByText(STAFF_DONE.added).waitFor();
  await page.getByRole("button", { name: SIGN_OUT.button, exact: true }).click();
  await page.getByRole("button", { name: PASSKEY_FORM.signIn }).click();
  await page.getByRole("navigation", { name: SHOP_NAV }).waitFor();
  await page.goto(`${at()}/shop/account`);
  await page.getByRole("button", { name: PASSKEY_LIST.removeWhich(PASSKEY_FORM.labelDefault) }).click();
  // The device had been signed in by it.
  await page.getByText(NOT_SIGNED_IN.says).waitFor();
});

/** The shop by its name: passkeys need one. */
const at = (): string => byName(shop().origin);
const namedLink = (): Promise<string> => signInLink(at(), keysOf(shop().dataDir).LINK_KEY);

/** A browser of somebody's own, with an authenticator in it. */
async function aPerson(options: BrowserContextOptions = {}): Promise<Page> {
  const { context } = await somebody(options);
  await bringInspector(context);
  const page = await context.newPage();
  await giveAuthenticator(page);
  return page;
}

/** Collects what is wrong with one page after the other, each known by a text that only it has. */
function looking() {
  const faults: string[] = [];
  return {
    see: async (page: Page, text: string) => {
      await page.getByText(text).first().waitFor();
      if (process.env["PICTURES"] !== undefined) await picture(page, text);
      faults.push(...(await inspectPage(page, text)));
    },
    found: () => faults,
  };
}

let taken = 0;
async function picture(page: Page, text: string) {
  for (const viewport of [{ width: 390, height: 844 }, TABLET]) {
    await page.setViewportSize(viewport);
    taken += 1;
    const name = `${String(taken).padStart(2, "0")}-${text.slice(0, 24).replace(/\W+/g, "-")}-${viewport.width}`;
    await page.screenshot({ path: `${process.env["PICTURES"]}/${name}.png`, fullPage: true });
  }
}
