import { readFileSync } from "node:fs";
import type axe from "axe-core";
import type { BrowserContext, Page } from "playwright-core";
import { DESKTOP, PHONE } from "#tests/support/browser.ts";

declare global {
  interface Window {
    readonly axe: typeof axe;
  }
}

const AXE = readFileSync(new URL(import.meta.resolve("axe-core/axe.min.js")), "utf8");

/** WCAG 2.2, levels A and AA: all that can be found by a machine. */
const LEVELS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** WCAG 2.2, 1.4.10: no scrolling to the side on a screen of this width. */
const NARROWEST = { width: 320, height: 640 };

/** Brings the inspector along to every page; the pages' own policy would refuse it as a script. */
export const bringInspector = (context: BrowserContext): Promise<unknown> => context.addInitScript({ content: AXE });

/** Everything wrong with the page as it stands, on both screens, in light and dark, and on the narrowest screen. */
export async function inspectPage(page: Page, name: string): Promise<readonly string[]> {
  const before = page.viewportSize() ?? PHONE;
  const found: string[] = [];
  for (const viewport of [PHONE, DESKTOP]) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      for (const fault of await faults(page)) found.push(`${name}, ${viewport.width} px, ${colorScheme}: ${fault}`);
    }
  }
  await page.setViewportSize(NARROWEST);
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  if (width > NARROWEST.width) found.push(`${name} is ${width} px wide on a screen of ${NARROWEST.width} px`);
  await page.setViewportSize(before);
  return found;
}

async function faults(page: Page): Promise<readonly string[]> {
  const violations = await page.evaluate(async (levels) => {
    const { violations } = await window.axe.run({ runOnly: levels, rules: { "target-size": { enabled: true } } });
    return violations.map(({ id, nodes }) => ({ id, nodes: nodes.map(({ html }) => html.slice(0, 160)) }));
  }, LEVELS);
  return violations.map(({ id, nodes }) => `${id}: ${nodes.join(" ")}`);
}
