import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { byName } from "#src/local/sign-in-link.ts";
import { openBrowser, PHONE } from "#tests/support/browser.ts";
import { type RunningShop, startShop } from "#tests/support/running-shop.ts";

/** A shop and a browser for one test file. */
export type Visiting = {
  readonly shop: () => RunningShop;
  /** Somebody's own browser, on a phone unless another screen is asked for; `visit` opens the shop in it. */
  readonly somebody: (options?: BrowserContextOptions) => Promise<Somebody>;
  readonly visit: (options?: BrowserContextOptions) => Promise<Page>;
};
export type Somebody = { readonly context: BrowserContext; readonly visit: (path?: string) => Promise<Page> };

/** What the browser says of a request that was refused on purpose, or that the test itself cut off. */
const EXPECTED =
  /^Failed to load resource: (?:the server responded with a status of 4\d\d|net::ERR_INTERNET_DISC|net::ERR_FAILED)/;

/** Starts both for the tests of a file. After each test its windows close, and none may have had any trouble. */
export function visiting(vars: Readonly<Record<string, string>> = {}, flags: readonly string[] = []): Visiting {
  let shop: RunningShop;
  let browser: Browser;
  let open: BrowserContext[] = [];
  let troubles: string[] = [];

  beforeAll(async () => {
    [shop, browser] = await Promise.all([startShop({ vars }), openBrowser(flags)]);
  });
  afterEach(async () => {
    await Promise.all(open.map((context) => context.close()));
    const had = troubles;
    [open, troubles] = [[], []];
    expect(had).toEqual([]);
  });
  afterAll(async () => {
    await Promise.all([browser?.close(), shop?.stop()]);
  });

  async function somebody(options: BrowserContextOptions = {}): Promise<Somebody> {
    const context = await browser.newContext({ viewport: PHONE, ...options });
    open.push(context);
    noteTroubles(context, shop.origin, (trouble) => troubles.push(trouble));
    const visit = async (path = "/") => {
      const page = await context.newPage();
      await page.goto(`${shop.origin}${path}`);
      return page;
    };
    return { context, visit };
  }
  return { shop: () => shop, somebody, visit: async (options) => (await somebody(options)).visit() };
}

/** Errors of scripts, anything refused by the content security policy, and requests to anybody but the shop. */
function noteTroubles(context: BrowserContext, origin: string, note: (trouble: string) => void): void {
  context.on("weberror", (failure) => note(`script: ${failure.error().message}`));
  context.on("console", (message) => {
    if (message.type() === "error" && !EXPECTED.test(message.text())) note(`console: ${message.text()}`);
  });
  context.on("request", (request) => {
    if (![`${origin}/`, `${byName(origin)}/`, "data:"].some((ours) => request.url().startsWith(ours)))
      note(`request: ${request.url()}`);
  });
}
