import { exports } from "cloudflare:workers";
import type { StaffRole } from "#shared/shop/staff.ts";
import { decodeBase64url } from "#src/http/base64url.ts";
import { anAuthenticator, type Said } from "#tests/bench/an-authenticator.ts";
import { Browser, fresh, type Page, signedIn } from "#tests/bench/the-shop.ts";

/** Passkeys need a secure address. */
export const SECURE = "https://shop.example";
const SITE = { origin: SECURE, rpId: "shop.example" };

let addresses = 0;
/** A browser at an address of its own, so that no test runs into the failures of another. */
export const aBrowser = () => new Browser({ here: SECURE, address: `198.51.100.${++addresses}` });

/** The first manager, signed in by the machine's link. */
export const aManager = () => signedIn(aBrowser());

/** What the script of a page asks for before it turns to the passkey. */
export async function optionsAt(browser: Browser, path: string, form: Readonly<Record<string, string>> = {}) {
  const page = await browser.post(path, form);
  if (page.status !== 200) throw new Error(`No options at ${path}: ${page.status} ${page.text}`);
  const options = JSON.parse(page.text);
  return { options, challenge: String(options.challenge) };
}

/** A passkey of that account; the handle is in the options. */
async function passkeyFor(options: { readonly user: { readonly id: string } }) {
  const handle = new TextDecoder().decode(decodeBase64url(options.user.id) ?? new Uint8Array());
  return anAuthenticator({ ...SITE, handle });
}
export type Key = Awaited<ReturnType<typeof passkeyFor>>;

/** A further passkey on an account. */
export async function addPasskey(browser: Browser, label = "Phone") {
  const { options, challenge } = await optionsAt(browser, "/shop/account/passkey-options");
  const key = await passkeyFor(options);
  const page = await browser.post("/shop/account/passkeys", { label, response: await key.make({ challenge }) });
  return { key, page };
}

/** Signs in; each part of the answer may be told wrong. */
export async function signInWith(key: Key, browser: Browser, said: Partial<Said> = {}, next = "/shop"): Promise<Page> {
  const { challenge } = await optionsAt(browser, "/shop/sign-in/options");
  return browser.post("/shop/sign-in", { next, response: await key.sign({ challenge, ...said }) });
}

/** The path of a link that a manager makes. */
export async function linkFrom(manager: Browser, path = "/shop/staff/invite", form = {}): Promise<string> {
  const page = await manager.post(path, form);
  const link = /\/shop\/invite\/[\w.-]+/.exec(page.text)?.[0];
  if (link === undefined) throw new Error(`No link: ${page.status} ${page.text}`);
  return link;
}

/** Somebody comes in by a link that a manager gave. */
export async function comeIn(link: string, { name = `Person ${fresh()}`, browser = aBrowser() } = {}) {
  const { options, challenge } = await optionsAt(browser, `${link}/options`, { name });
  const key = await passkeyFor(options);
  const page = await browser.post(link, { name, label: "Tablet", response: await key.make({ challenge }) });
  return { browser, key, page, name };
}

/** Somebody of that role at work, invited by the first manager. */
export async function atWork(role: StaffRole) {
  const manager = await aManager();
  return { manager, ...(await comeIn(await linkFrom(manager, "/shop/staff/invite", { role }))) };
}

/** The account's number in its manager's pages. */
export async function idOf(manager: Browser, name: string): Promise<string> {
  const { text } = await manager.get("/shop/staff");
  const id = new RegExp(`/shop/staff/(\\d+)">${name}<`).exec(text)?.[1];
  if (id === undefined) throw new Error(`No account of ${name}`);
  return id;
}

/** An answer as it comes, without following where it leads. */
export const askPlain = (path: string, init: RequestInit = {}) =>
  exports.default.fetch(`${SECURE}${path}`, { redirect: "manual", ...init });
