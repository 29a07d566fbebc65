import { exports } from "cloudflare:workers";
import { vi } from "vitest";
import { signToken } from "#src/http/signed-token.ts";

export const HERE = "http://shop.example";
/** As the test environment has it. */
export const LINK_KEY = "test-key-that-signs-nothing-outside-of-tests";

/** A Monday morning at the demo shop, 10:00 on its wall. Worker and object run in this isolate, so both tell this time. */
export const MONDAY = Date.UTC(2027, 2, 1, 15);
export const MINUTE = 60_000;
export const setClock = (now: number) => vi.useFakeTimers({ toFake: ["Date"], now });

/** The first request loads the whole worker, which may take longer than a test should. */
export const WARM_UP = [async () => void (await new Browser().get("/shop")), 60_000] as const;

export type Page = { readonly status: number; readonly text: string; readonly headers: Headers; readonly path: string };

/** A browser without JavaScript: keeps cookies, sends forms, and follows a 303 as browsers do. */
export class Browser {
  readonly #cookies = new Map<string, string>();
  readonly #here: string;
  readonly #address: string;

  constructor({ here = HERE, address = "192.0.2.7" } = {}) {
    this.#here = here;
    this.#address = address;
  }

  get(path: string): Promise<Page> {
    return this.#ask(path, {});
  }

  post(path: string, form: Readonly<Record<string, string | readonly string[]>> = {}, headers = {}): Promise<Page> {
    const fields = Object.entries(form).flatMap(([name, value]) => [value].flat().map((one) => [name, one]));
    return this.#ask(path, {
      method: "POST",
      body: new URLSearchParams(fields).toString(),
      headers: { "content-type": "application/x-www-form-urlencoded", "sec-fetch-site": "same-origin", ...headers },
    });
  }

  /** What this browser would send. */
  get cookie(): string {
    return [...this.#cookies].map(([name, value]) => `${name}=${value}`).join("; ");
  }

  set cookie(text: string) {
    this.#cookies.clear();
    for (const pair of text.split("; ")) this.#cookies.set(...(pair.split("=", 2) as [string, string]));
  }

  async #ask(path: string, init: RequestInit): Promise<Page> {
    const headers = { ...(init.headers as object), "cf-connecting-ip": this.#address, cookie: this.cookie };
    const answer = await exports.default.fetch(`${this.#here}${path}`, { ...init, headers, redirect: "manual" });
    const set = answer.headers.get("set-cookie");
    if (set !== null) this.#cookies.set(...(set.split(";")[0]!.split("=", 2) as [string, string]));
    const location = answer.headers.get("location");
    if (answer.status === 303 && location !== null) {
      await answer.arrayBuffer();
      return this.get(location);
    }
    return { status: answer.status, text: await answer.text(), headers: answer.headers, path };
  }
}

let made = 0;
/** Text that no other test has used. */
export const fresh = () => `n${++made}`;

export const signInPath = async ({ nonce = fresh(), expires = Date.now() + 10 * MINUTE, purpose = "sign-in" } = {}) =>
  `/shop/sign-in/${await signToken(LINK_KEY, { purpose, nonce, expires })}`;

/** Somebody of the shop at work. */
export async function signedIn(browser = new Browser()): Promise<Browser> {
  await browser.post(await signInPath());
  return browser;
}

/** The value of a form's field, as the page came. */
export function fieldValue({ text }: Page, name: string): string {
  const tag = [...text.matchAll(/<(?:input|textarea)\b[^>]*>/g)]
    .map(([it]) => it)
    .find((it) => it.includes(`name="${name}"`));
  const value = tag === undefined ? undefined : /value="([^"]*)"/.exec(tag)?.[1];
  if (value === undefined) throw new Error(`No field ${name} on ${text}`);
  return unescaped(value);
}

/** What a person reads: no tags, no entities, single spaces. */
export const wordsOf = ({ text }: Page): string => unescaped(text.replace(/<[^>]*>/g, " ")).replace(/\s+/g, " ");

const unescaped = (html: string) =>
  html
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&");
