import type { BrowserContext, Page } from "playwright-core";
import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import { bookForCaller, holdForCaller } from "#tests/browser/shop-desk.ts";
import { FULL_REBUILD } from "#tests/support/owners.ts";
import type { RunningShop } from "#tests/support/running-shop.ts";
import { signIn } from "#tests/support/sign-in.ts";

/** Books a rebuild of a set-nut unit and takes it in. @returns its number */
export async function aUnitReceived(context: BrowserContext, shop: RunningShop): Promise<string> {
  await signIn(context.request, shop);
  const page = await context.newPage();
  await page.goto(`${shop.origin}/shop`);
  await holdForCaller(page, FULL_REBUILD);
  await bookForCaller(page, "Tansy Marl");
  const [number = ""] = (await page.getByRole("heading", { level: 1 }).textContent())?.match(/\w+$/) ?? [];
  if (!readJobNumber(number).ok) throw new Error(`No job number: ${number}`);
  const received = await context.request.post(`${shop.origin}/shop/receive/${number}`, {
    headers: { origin: shop.origin },
    form: { note: "" },
  });
  if (!received.ok()) throw new Error(`Not received: ${received.status()}`);
  await page.close();
  return number;
}

export const stepAt = (page: Page, step: SheetStepId) => page.locator(`details[data-step="${step}"]`);

/** Opens a step that is folded. */
export async function openStep(page: Page, step: SheetStepId): Promise<void> {
  const section = stepAt(page, step);
  if ((await section.getAttribute("open")) === null) await section.locator("> summary").click();
}

/** What goes into each step of a rebuild where nothing is out of the way, by field; radios by their value. */
export const DULL_STEPS: readonly (readonly [SheetStepId, Readonly<Record<string, readonly string[]>>])[] = [
  [
    "as-found-slip",
    { readings: ["12.1"], breakaway: ["14"], "tool.accuracyPercent": ["1"], "tool.resolution": ["0.05"] },
  ],
  ["inspect", { unitFamily: ["set-nut"] }],
  ["needles-out", { needles: ["40"] }],
  ["needles-in", { needles: ["40"] }],
  ["spring-washers", {}],
  ["plate-recess", {}],
  ["screws", {}],
  ["impeller", { note: ["Heated to 90 °C"] }],
  ["slip-before-lock", { "tries.nutDegrees": ["180", "230"], "tries.slip": ["8.6", "10.8"] }],
  ["lock-nut", {}],
  ["final-slip", { readings: ["12.8", "12.85", "12.8"] }],
  ["turn-by-hand", {}],
];

/** Fills a step's form, as far as the page has the fields. */
export async function fillStep(page: Page, step: SheetStepId, fields: Readonly<Record<string, readonly string[]>>) {
  const section = stepAt(page, step);
  if (step === "inspect") for (const good of await section.locator("input[value=good]").all()) await good.check();
  for (const [name, values] of Object.entries(fields)) {
    if (name.startsWith("tool.") && !(await section.locator(`[name="${name}"]`).isVisible())) {
      await section.locator(".tool > summary").click();
    }
    const all = section.locator(`[name="${name}"]`);
    for (const [place, value] of values.entries()) {
      const isList = (await all.nth(place).evaluate((it) => it.tagName)) === "SELECT";
      await (isList ? all.nth(place).selectOption(value) : all.nth(place).fill(value));
    }
  }
}

export const keepStep = (page: Page, step: SheetStepId): Promise<void> =>
  stepAt(page, step).locator("button[value=keep]").click();
