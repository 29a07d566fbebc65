import type { BrowserContextOptions, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { QuestionId } from "#shared/intake/draft.ts";
import { CONTACT_WORDS } from "#shared/messages/contact-words.ts";
import {
  bookIt,
  fillIn,
  holdFirstOffer,
  postAnswers,
  pressNext,
  type Said,
  untilAsked,
} from "#tests/support/owner-walk.ts";
import { daysAgo, SLIP_CHECK } from "#tests/support/owners.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

type Wrong = { readonly what: string; readonly at: QuestionId; readonly said: Said; readonly field: string };

const WRONG: readonly (Wrong & { readonly told: RegExp })[] = [
  { what: "words for hours", at: "engineHours", said: { value: "plenty" }, field: "value", told: /a number, such as/ },
  { what: "the year 3000", at: "builtYear", said: { value: "3000" }, field: "value", told: /from 1985 to \d{4}/ },
  {
    what: "a service tomorrow",
    at: "lastRebuild",
    said: { when: "known", date: daysAgo(-2) },
    field: "date",
    told: /still to come/,
  },
  {
    what: "more hours then than now",
    at: "lastRebuild",
    said: { when: "known", hours: "61" },
    field: "hours",
    told: /more than the 60 h .* meter replaced\?/,
  },
];

describe.each([
  ["with", true],
  ["without", false],
])("%s the script", (_, javaScriptEnabled) => {
  it.each(WRONG)("$what: says what is accepted, marks the field, keeps what was typed", async (wrong) => {
    const page = await asked(wrong.at, { javaScriptEnabled });
    await fillIn(page, wrong.said);
    await pressNext(page);
    const alert = page.getByRole("alert");
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(wrong.told);
    const field = page.locator(`#question [name=${wrong.field}]`);
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    expect(await field.getAttribute("aria-describedby")).toContain(await alert.getAttribute("id"));
    expect(await field.inputValue()).toBe(wrong.said[wrong.field]);
    expect(await page.locator("[aria-invalid]").count()).toBe(1);
  });

  it.each(["symptoms", "unitFamily", "lastRebuild"] as const)("nothing chosen at %s: asks to choose", async (at) => {
    const page = await asked(at, { javaScriptEnabled });
    await pressNext(page);
    await page.getByRole("alert").waitFor();
    expect(await page.getByRole("alert").textContent()).toContain("Pick an answer first.");
    await untilAsked(page, at);
  });

  it("an empty contact form names each field, with a link to it, and what was typed stays", async () => {
    const page = await atConfirm({ javaScriptEnabled });
    await page.getByLabel("Email", { exact: true }).fill("nobody at home");
    await page.getByLabel("Phone", { exact: true }).fill("12");
    await page.getByLabel("Street and number").fill("4 Reed Bank Lane");
    await page.getByRole("button", { name: "Book it" }).click();
    const links = page.getByRole("alert").getByRole("link");
    await links.first().waitFor();
    const { name, phone, email, region, postcode } = CONTACT_WORDS.labels;
    expect((await links.allTextContents()).sort()).toEqual([name, phone, email, region, postcode].sort());
    for (const link of await links.all()) {
      const field = page.locator((await link.getAttribute("href")) ?? "");
      expect(await field.getAttribute("aria-invalid")).toBe("true");
      const reason = page.locator(`#${await field.getAttribute("aria-describedby")}`);
      expect(await page.getByRole("alert").textContent()).toContain(await reason.textContent());
    }
    expect(await page.getByLabel("Email", { exact: true }).inputValue()).toBe("nobody at home");
    expect(await page.getByLabel("Phone", { exact: true }).inputValue()).toBe("12");
    expect(await page.getByLabel("Street and number").inputValue()).toBe("4 Reed Bank Lane");
    await links.first().click();
    expect(await page.locator(":focus").getAttribute("id")).toBe("name");
  });

  it("time is held for longer without losing what was typed", async () => {
    const page = await atConfirm({ javaScriptEnabled });
    const before = await heldUntil(page);
    await page.getByLabel("Your name").fill("Ada Quill");
    await page.getByRole("button", { name: "Hold it longer" }).click();
    await page.locator(`time:not([data-until="${before}"])[data-until]`).waitFor();
    expect(await heldUntil(page)).toBeGreaterThan(before);
    expect(await page.getByLabel("Your name").inputValue()).toBe("Ada Quill");
  });

  it("when the held time is gone, another can be picked in the form that was filled", async () => {
    const page = await atConfirm({ javaScriptEnabled });
    await page.getByLabel("Your name").fill("Ada Quill");
    await page.getByLabel("Email", { exact: true }).fill("ada.quill@example.com");
    await page.getByLabel("I collect the unit at the shop").check();
    await giveUpHold(page);
    await page.getByRole("button", { name: "Book it" }).click();
    await page.getByText(CONTACT_WORDS.holdEnded).waitFor();
    expect(await page.getByLabel("Your name").inputValue()).toBe("Ada Quill");
    const others = page.getByRole("group", { name: CONTACT_WORDS.pickAgain }).getByRole("radio");
    expect(await others.first().isChecked()).toBe(true);
    await others.last().check();
    await bookIt(page);
  });
});

it("a date that is only half typed is asked for again, and does not pass for one that is not known", async () => {
  const page = await asked("lastRebuild");
  await fillIn(page, { when: "known" });
  await page.getByLabel("Date").focus();
  await page.keyboard.type("05");
  await pressNext(page);
  await page.getByRole("alert").waitFor();
  expect(await page.getByRole("alert").textContent()).toContain("Write a date");
  await page.getByLabel("Never").check();
  await pressNext(page);
  await untilAsked(page, "lastSlipSet");
});

it("a mended field is no longer marked", async () => {
  const page = await asked("lastRebuild");
  await fillIn(page, { when: "known", date: daysAgo(-2), hours: "61" });
  await pressNext(page);
  await page.locator("[name=date][aria-invalid]").waitFor();
  await fillIn(page, { date: daysAgo(2) });
  await pressNext(page);
  await page.locator("[name=hours][aria-invalid]").waitFor();
  expect(await page.locator("[aria-invalid]").count()).toBe(1);
});

/** An owner who has said everything before this question, and is asked it now. */
async function asked(question: QuestionId, options: BrowserContextOptions = {}): Promise<Page> {
  const { context, visit } = await somebody(options);
  await postAnswers(context.request, { origin: shop().origin, owner: SLIP_CHECK, before: question });
  const page = await visit("/intake");
  await untilAsked(page, question);
  return page;
}

async function atConfirm(options: BrowserContextOptions): Promise<Page> {
  const { context, visit } = await somebody(options);
  await postAnswers(context.request, { origin: shop().origin, owner: SLIP_CHECK });
  const page = await visit("/verdict");
  await holdFirstOffer(page);
  return page;
}

const heldUntil = async (page: Page): Promise<number> =>
  Number(await page.locator("[data-until]").getAttribute("data-until"));

/** The same owner holds another time in another tab: the first hold is gone at once, as by its end. */
async function giveUpHold(page: Page): Promise<void> {
  const other = await page.context().newPage();
  await other.goto(`${shop().origin}/verdict`);
  await holdFirstOffer(other);
  await other.close();
}
