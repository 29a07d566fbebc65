import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { OFFLINE } from "#shared/messages/owner-words.ts";
import { DESKTOP, PHONE } from "#tests/support/browser.ts";
import { answerOne, askedNow, type Said } from "#tests/support/owner-walk.ts";
import { SLIP_CHECK } from "#tests/support/owners.ts";
import { visiting } from "#tests/support/visiting.ts";

const { visit } = visiting();

it.each([
  ["a phone", PHONE],
  ["a desktop", DESKTOP],
])("by keyboard alone, on %s, from the first answer to the tag; the focus is always in sight", async (_, viewport) => {
  const page = await visit({ viewport });
  while (await page.locator("form[data-question]").isVisible()) {
    const question = await askedNow(page);
    await answerByKeys(page, SLIP_CHECK.says[question] ?? {});
    await page.locator(`form[data-question]:not([data-question=${question}]), h1:not(form h1)`).first().waitFor();
  }
  await page.getByRole("heading", { level: 1, name: SLIP_CHECK.verdict }).waitFor();
  await pressOn(page, ".offer button");
  await page.getByRole("heading", { level: 1, name: "Book the time we hold for you" }).waitFor();
  await typeInto(page, "#name", "Ada Quill");
  await typeInto(page, "#phone", "202-555-0143");
  await tabTo(page, "[name=collect]");
  await page.keyboard.press("Space");
  await tabTo(page, "form[data-keep] button");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { level: 1, name: "Job tag" }).waitFor();
  await tabTo(page, "[data-print]");
  await tabTo(page, "summary");
  await page.keyboard.press("Enter");
  await tabTo(page, ".offer button");
});

it("the first stop of every page skips to what matters", async () => {
  const page = await visit();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  expect(await page.locator("#main :focus").count()).toBe(1);
});

it("a line of the tag opens its question by Enter, and the focus goes to it", async () => {
  const page = await visit();
  await answerOne(page, SLIP_CHECK);
  await page.keyboard.press("Shift+Tab");
  expect(await page.locator(":focus").textContent()).toContain("Noticed");
  await page.keyboard.press("Enter");
  await page.locator("form[data-question=symptoms]").waitFor();
  expect(await page.locator("h1:focus").textContent()).toBe("What have you noticed?");
});

it("a message that stays on top hides no field that has the focus", async () => {
  const page = await visit();
  await answerOne(page, SLIP_CHECK);
  await page.context().setOffline(true);
  await answerOne(page, SLIP_CHECK);
  await page.getByText(OFFLINE.kept).waitFor();
  await page.getByRole("link", { name: "Noticed" }).click();
  await page.locator("form[data-question=symptoms]").waitFor();
  await page.getByRole("button", { name: "Next" }).focus();
  for (let back = 0; back < 10; back += 1) {
    await page.keyboard.press("Shift+Tab");
    await expectInSight(page);
  }
});

async function answerByKeys(page: Page, said: Said): Promise<void> {
  if ("notSure" in said) return pressOn(page, "[name=notSure]");
  for (const [name, values] of Object.entries(said)) {
    for (const value of [values].flat()) await putByKeys(page, name, value);
  }
  await pressOn(page, "#question button[type=submit]");
}

async function putByKeys(page: Page, name: string, value: string): Promise<void> {
  const field = page.locator(`#question [name=${name}]`).first();
  const kind = await field.evaluate((it) => (it instanceof HTMLInputElement ? it.type : it.localName));
  if (kind === "radio") return pickByKeys(page, name, value);
  const isBox = kind === "checkbox";
  await tabTo(page, isBox ? `#question [name=${name}][value="${value}"]` : `#question [name=${name}]`);
  if (isBox) await page.keyboard.press("Space");
  else if (kind === "date") await page.keyboard.type(asTyped(value));
  else await page.keyboard.type(value);
}

/** The order of day and month in a date field is that of the browser's language, American here. */
const asTyped = (date: string): string => date.replace(/(\d+)-(\d+)-(\d+)/, "$2$3$1");

/** A group of radio buttons is one stop; the arrows go round in it. */
async function pickByKeys(page: Page, name: string, value: string): Promise<void> {
  await tabTo(page, `#question [name=${name}]`);
  await page.keyboard.press("Space");
  for (let turn = 0; turn < 5; turn += 1) {
    if (await page.locator(`#question [name=${name}][value="${value}"]`).isChecked()) return;
    await page.keyboard.press("ArrowDown");
  }
  throw new Error(`${value} cannot be picked by the arrows.`);
}

async function typeInto(page: Page, selector: string, text: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.type(text);
}

async function pressOn(page: Page, selector: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.press("Enter");
}

/** Goes on stop by stop; on each the focus must be seen. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let stop = 0; stop < 40; stop += 1) {
    await page.keyboard.press("Tab");
    await expectInSight(page);
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return;
  }
  throw new Error(`${selector} is not reached by Tab.`);
}

/** WCAG 2.2: 2.4.7 and 2.4.11. The focus is somewhere, has an outline, and is not hidden behind anything. */
async function expectInSight(page: Page): Promise<void> {
  const focus = await page.evaluate(() => {
    const it = document.activeElement;
    if (it === null || it === document.body) return "nowhere";
    if (getComputedStyle(it).outlineStyle === "none") return `without outline: ${it.outerHTML}`;
    const { left, top, width, height } = it.getBoundingClientRect();
    const seen = document.elementFromPoint(left + width / 2, top + height / 2);
    return seen !== null && (it.contains(seen) || seen.contains(it)) ? "in sight" : `hidden: ${it.outerHTML}`;
  });
  expect(focus).toBe("in sight");
}
