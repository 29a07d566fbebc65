import { type Browser, chromium } from "playwright-core";

/** Quiet, and unable to look up any name: what the pages need must come from the shop itself. */
const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost",
];

/** The two screens that every page is tried on. */
export const PHONE = { width: 390, height: 844 };
export const DESKTOP = { width: 1280, height: 800 };

/** The browser that `npm test` found, else the one that Debian's package puts there. */
export function openBrowser(flags: readonly string[] = []): Promise<Browser> {
  const executablePath = process.env["CHROME_BIN"] ?? "/usr/bin/chromium";
  return chromium.launch({ executablePath, args: [...FLAGS, ...flags] });
}
