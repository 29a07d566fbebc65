import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { CONTACT_PROBLEMS } from "#shared/messages/contact-words.ts";
import { ERROR_WORDS } from "#shared/messages/error-words.ts";
import { ARRIVAL_GROUP, ARRIVALS, FIND_JOB_PROBLEM } from "#shared/messages/shop-arrival-words.ts";
import { CALLER, CALLER_CONTACT, CALLER_REFUSED } from "#shared/messages/shop-caller-words.ts";
import { CANCEL, MOVE, NEW_LINK, SLOT_REFUSED } from "#shared/messages/shop-change-words.ts";
import { DAY } from "#shared/messages/shop-day-words.ts";
import { JOB, JOB_DONE, NO_SUCH_JOB } from "#shared/messages/shop-job-words.ts";
import { SETTINGS } from "#shared/messages/shop-settings-words.ts";
import { NOT_SIGNED_IN, SIGN_IN, SIGN_IN_PROBLEM, SIGN_OUT } from "#shared/messages/shop-sign-in-words.ts";
import { ACCOUNT } from "#shared/messages/shop-staff-words.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { bookForCaller, holdForCaller, showVerdict, takeDown } from "#tests/browser/shop-desk.ts";
import type { Owner } from "#tests/support/owner-walk.ts";
import { FULL_REBUILD, SLIP_CHECK, STOP_RIDING } from "#tests/support/owners.ts";
import { newSignInLink, signIn } from "#tests/support/sign-in.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

/** As the shop says it is not sure of the washers, it is not asked back. */
const URGENT: Owner = { ...STOP_RIDING, says: { ...STOP_RIDING.says, washers: { choice: "unknown" } } };

it("before sign-in, at it, and after signing out", async () => {
  const { context } = await somebody();
  await bringInspector(context);
  const page = await context.newPage();
  const { see, found } = looking(page);
  await page.goto(`${shop().origin}/shop`);
  await see(NOT_SIGNED_IN.says);
  await page.goto(`${shop().origin}/shop/sign-in/no-such-link`);
  await see(SIGN_IN_PROBLEM["link-not-ours"]);
  await page.goto(await newSignInLink(shop()));
  await see(SIGN_IN.asks);
  await page.getByRole("button", { name: SIGN_IN.button }).click();
  await see(ACCOUNT.welcome);
  await page.getByRole("link", { name: ACCOUNT.later }).click();
  await see(DAY.nothing);
  await page.getByRole("link", { name: ARRIVALS.title }).click();
  await see(ARRIVALS.none);
  await page.goto(`${shop().origin}/shop`);
  await page.getByRole("button", { name: SIGN_OUT.button }).click();
  await see(SIGN_OUT.says);
  await page.goto(`${shop().origin}/shop/sign-in`);
  await see(NOT_SIGNED_IN.askManager);
  expect(found()).toEqual([]);
});

it("arrivals, and finding a job", async () => {
  const page = await atShop();
  const { see, found } = looking(page);
  const number = await aJob(page, URGENT);
  await cancel(page, await aJob(page, SLIP_CHECK));
  await page.goto(`${shop().origin}/shop/arrivals`);
  await see(ARRIVAL_GROUP.cancelled);
  await page.goto(`${shop().origin}/shop/find?number=${number.slice(0, -1)}${number.endsWith("Z") ? "Y" : "Z"}`);
  await see(FIND_JOB_PROBLEM["check-symbol-wrong"]);
  await page.goto(`${shop().origin}/shop/jobs/16JZ`);
  await see(NO_SUCH_JOB.says);
  await page.goto(`${shop().origin}/shop/nothing-here`);
  await see(ERROR_WORDS.notFound.detail);
  expect(found()).toEqual([]);
});

it("a job, and all that is done with it", async () => {
  const page = await atShop();
  const { see, found } = looking(page);
  const number = await aJob(page, URGENT);
  const at = (path: string) => page.goto(`${shop().origin}/shop/jobs/${number}${path}`);
  await at("");
  await see(JOB.suspectsHint);
  await at("/move");
  await see(MOVE.fromHint);
  await submitWithout(page, MOVE.button);
  await see(SLOT_REFUSED["not-a-slot"]);
  await at("/move?from=2027-02-30");
  await see(MOVE.notADate);
  await page.getByRole("radio").last().check();
  await page.getByRole("button", { name: MOVE.button }).click();
  await see(JOB_DONE.moved);
  await at("/link");
  await see(NEW_LINK.says);
  await page.getByRole("button", { name: NEW_LINK.button }).click();
  await see(NEW_LINK.made);
  await at("/link/no-such-pass");
  await see(NEW_LINK.gone);
  await at("/cancel");
  await see(CANCEL.says);
  await page.getByRole("button", { name: CANCEL.button }).click();
  await see(JOB_DONE.cancelled);
  expect(found()).toEqual([]);
});

it("booking for a caller", async () => {
  const page = await atShop();
  const { see, found } = looking(page);
  await page.goto(`${shop().origin}/shop/book`);
  await see(CALLER.how);
  await showVerdict(page);
  await see(CALLER.symptomsNeeded);
  await takeDown(page, { ...STOP_RIDING, says: { ...STOP_RIDING.says, engineHours: { value: "plenty" } } });
  await showVerdict(page);
  await see(CALLER.mend(2));
  await page.goto(`${shop().origin}/shop/book`);
  await takeDown(page, FULL_REBUILD);
  await showVerdict(page);
  await see(CALLER.verdictTitle);
  await submitWithout(page, CALLER.hold);
  await see(SLOT_REFUSED["not-a-slot"]);
  await page.getByRole("radio").first().check();
  await page.getByRole("button", { name: CALLER.hold }).click();
  await see(CALLER.contactTitle);
  await page.getByLabel(CALLER_CONTACT.email, { exact: true }).fill("nobody at home");
  await page.getByLabel(CALLER_CONTACT.goAhead).fill("lots");
  await page.getByRole("button", { name: CALLER.book }).click();
  await see(CONTACT_PROBLEMS.goAhead);
  for (const label of [CALLER_CONTACT.email, CALLER_CONTACT.goAhead])
    await page.getByLabel(label, { exact: true }).clear();
  await page.evaluate(() => document.querySelector("[name=hold]")?.setAttribute("value", "no-such-hold"));
  await bookForCaller(page, "Tansy Marl");
  await see(CALLER_REFUSED["no-such-hold"]);
  await page.goto(`${shop().origin}/shop/book/no-such-call`);
  await see(CALLER.goneSays);
  expect(found()).toEqual([]);
});

it("settings", async () => {
  const page = await atShop();
  const { see, found } = looking(page);
  await page.goto(`${shop().origin}/shop/settings`);
  await see(SETTINGS.keeps);
  const other = await page.context().newPage();
  await other.goto(`${shop().origin}/shop/settings`);
  await other.getByRole("button", { name: SETTINGS.button }).click();
  await page.getByRole("button", { name: SETTINGS.button }).click();
  await see(SETTINGS.showNew);
  await page.locator('[name="prices.byJob.slip-check.set-nut"]').fill("cheap");
  await page.locator('[name="calendar.closures"]').fill("some day");
  await page.getByRole("button", { name: SETTINGS.button }).click();
  await see(SETTINGS.mend(2));
  await page.goto(`${shop().origin}/shop/settings`);
  await page.getByRole("button", { name: SETTINGS.button }).click();
  await see("Saved as version");
  expect(found()).toEqual([]);
});

/** Collects what is wrong with one page after the other, each known by a text that only it has. */
function looking(page: Page) {
  const faults: string[] = [];
  return {
    see: async (text: string) => {
      await page.getByText(text).first().waitFor();
      faults.push(...(await inspectPage(page, text)));
    },
    found: () => faults,
  };
}

/** The arrivals, signed in. */
async function atShop(): Promise<Page> {
  const { context, visit } = await somebody();
  await bringInspector(context);
  await signIn(context.request, shop());
  return visit("/shop");
}

/** Books for a caller. @returns the job number */
async function aJob(page: Page, owner: Owner): Promise<string> {
  await holdForCaller(page, owner);
  await bookForCaller(page, "Tansy Marl");
  await page.getByLabel(NEW_LINK.label).waitFor();
  return /\w+$/.exec((await page.getByRole("heading", { level: 1 }).textContent()) ?? "")?.[0] ?? "";
}

async function cancel(page: Page, number: string): Promise<void> {
  await page.goto(`${shop().origin}/shop/jobs/${number}/cancel`);
  await page.getByRole("button", { name: CANCEL.button }).click();
}

/** Sends a form although the browser would ask for a pick first. */
async function submitWithout(page: Page, button: string): Promise<void> {
  await page.evaluate(() => {
    for (const form of document.forms) form.noValidate = true;
  });
  await page.getByRole("button", { name: button }).click();
}
