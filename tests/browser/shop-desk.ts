import type { Page } from "playwright-core";
import { CALLER, CALLER_CONTACT } from "#shared/messages/shop-caller-words.ts";
import type { Owner } from "#tests/support/owner-walk.ts";

/** Puts into the form that holds all questions what the caller says; what the caller is not sure of stays as it is. */
export async function takeDown(page: Page, { says }: Owner): Promise<void> {
  for (const [question, said] of Object.entries(says)) {
    for (const [name, values] of Object.entries(said)) {
      for (const value of [values].flat()) await put(page, `${question}.${name}`, value);
    }
  }
}

async function put(page: Page, name: string, value: string): Promise<void> {
  const field = page.locator(`[name="${name}"]`);
  const box = page.locator(`[type=checkbox][name="${name}"][value="${value}"]`);
  if ((await box.count()) === 1) await box.check();
  else if ((await page.locator(`select[name="${name}"]`).count()) === 1) await field.selectOption(value);
  else if ((await field.count()) === 1) await field.fill(value);
}

export const showVerdict = (page: Page): Promise<void> => page.getByRole("button", { name: CALLER.next }).click();

/** From a caller's answers to the page on which the time is booked. */
export async function holdForCaller(page: Page, owner: Owner): Promise<void> {
  await page.getByRole("link", { name: CALLER.title }).click();
  await takeDown(page, owner);
  await showVerdict(page);
  await page.getByRole("radio").first().check();
  await page.getByRole("button", { name: CALLER.hold }).click();
  await page.getByRole("heading", { name: CALLER.contactTitle }).waitFor();
}

/** A name, a phone number and the way back: all that has to be said to book. */
export async function bookForCaller(page: Page, name: string): Promise<void> {
  await page.getByLabel(CALLER_CONTACT.name, { exact: true }).fill(name);
  await page.getByLabel(CALLER_CONTACT.phone, { exact: true }).fill("202-555-0156");
  await page.getByLabel(CALLER_CONTACT.collect).check();
  await page.getByRole("button", { name: CALLER.book }).click();
}

/** Tab by tab to what has that name, whose focus must be in sight on the way. */
export async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const it = document.activeElement;
      if (it === null || it === document.body) return null;
      return { text: it.textContent?.trim(), outline: getComputedStyle(it).outlineStyle };
    });
    if (at?.outline === "none") throw new Error(`The focus cannot be seen at “${at.text}”.`);
    if (at?.text === name) return;
  }
  throw new Error(`“${name}” is not reached by the keyboard.`);
}
