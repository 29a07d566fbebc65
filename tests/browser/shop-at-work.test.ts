import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { QUESTION_WORDS } from "#shared/messages/question-words.ts";
import { ARRIVAL_GROUP, ARRIVALS } from "#shared/messages/shop-arrival-words.ts";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import { NEW_LINK } from "#shared/messages/shop-change-words.ts";
import { DAY } from "#shared/messages/shop-day-words.ts";
import { JOB, JOB_ACTIONS } from "#shared/messages/shop-job-words.ts";
import { SETTINGS } from "#shared/messages/shop-settings-words.ts";
import { SIGN_IN } from "#shared/messages/shop-sign-in-words.ts";
import { ACCOUNT } from "#shared/messages/shop-staff-words.ts";
import { bookForCaller, holdForCaller, showVerdict, tabTo, takeDown } from "#tests/browser/shop-desk.ts";
import { DESKTOP } from "#tests/support/browser.ts";
import { postAnswers } from "#tests/support/owner-walk.ts";
import { FULL_REBUILD, SLIP_CHECK, STOP_RIDING } from "#tests/support/owners.ts";
import { newSignInLink, signIn } from "#tests/support/sign-in.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

it("a call becomes a job: answers, verdict, a held time, who is calling, and a link to hand over", async () => {
  const page = await atShop();
  await page.getByRole("link", { name: CALLER.title }).click();
  await takeDown(page, STOP_RIDING);
  await showVerdict(page);
  await page.getByLabel(QUESTION_WORDS.washersAgain.asks).selectOption("ceramic");
  await showVerdict(page);
  await page.getByText(STOP_RIDING.verdict).waitFor();
  const picked = await instantOf(page.locator(".choice time").first());
  await page.getByRole("radio").first().check();
  await page.getByRole("button", { name: CALLER.hold }).click();
  await page.getByRole("heading", { name: CALLER.contactTitle }).waitFor();
  await bookForCaller(page, "Tansy Marl");
  await page.getByRole("heading", { level: 1, name: "The owner's link to job" }).waitFor();
  const link = await page.getByLabel(NEW_LINK.label).inputValue();

  const owner = await (await somebody()).context.newPage();
  await owner.goto(link);
  const number = (await owner.locator("h1 .number").textContent()) ?? "";
  expect(await instantOf(owner.locator("article time").first())).toBe(picked);

  await page.getByRole("link", { name: ARRIVALS.title }).click();
  const urgent = page.getByRole("region", { name: ARRIVAL_GROUP.urgent });
  const row = urgent.getByRole("row").filter({ hasText: number });
  expect(await row.textContent()).toContain("Tansy Marl");
  await row.getByRole("link").click();
  await page.getByRole("heading", { level: 1, name: JOB.title(number) }).waitFor();
  expect(await page.getByRole("link", { name: "+12025550156" }).getAttribute("href")).toBe("tel:+12025550156");
});

it("an error in a call says which answer, and nothing that was typed is lost", async () => {
  const page = await atShop();
  await page.getByRole("link", { name: CALLER.title }).click();
  await takeDown(page, { ...FULL_REBUILD, says: { ...FULL_REBUILD.says, symptoms: {}, builtYear: { value: "20x6" } } });
  await showVerdict(page);
  await page.getByRole("heading", { name: CALLER.mend(2) }).waitFor();
  await page.getByRole("alert").getByRole("link").last().click();
  expect(await page.locator(":focus").getAttribute("name")).toBe("builtYear.value");
  expect(await page.locator(":focus").inputValue()).toBe("20x6");
  await page.locator(":focus").fill("2020");
  await takeDown(page, { ...FULL_REBUILD, says: { symptoms: FULL_REBUILD.says.symptoms ?? {} } });
  await showVerdict(page);
  await page.getByText(FULL_REBUILD.verdict).waitFor();
});

it("by the keyboard alone: sign in, open a job, make its owner a new link", async () => {
  const booking = await atShop();
  await holdForCaller(booking, SLIP_CHECK);
  await bookForCaller(booking, "Wren Calloway");
  const [number = ""] = (await booking.getByRole("heading", { level: 1 }).textContent())?.match(/\w+$/) ?? [];
  const old = await booking.getByLabel(NEW_LINK.label).inputValue();

  const { context } = await somebody({ viewport: DESKTOP });
  const page = await context.newPage();
  await page.goto(await newSignInLink(shop()));
  await press(page, SIGN_IN.button);
  await page.getByRole("heading", { level: 1, name: ACCOUNT.title }).waitFor();
  await press(page, ACCOUNT.later);
  await page.getByRole("heading", { level: 1, name: DAY.title }).waitFor();
  await press(page, ARRIVALS.title);
  await page.getByRole("heading", { level: 1, name: ARRIVALS.title }).waitFor();
  await press(page, number);
  await page.getByRole("heading", { level: 1, name: JOB.title(number) }).waitFor();
  await press(page, JOB_ACTIONS.link);
  await page.getByRole("heading", { level: 1, name: NEW_LINK.title(number) }).waitFor();
  await press(page, NEW_LINK.button);
  await page.getByRole("heading", { level: 1, name: NEW_LINK.madeTitle(number) }).waitFor();
  const made = await page.getByLabel(NEW_LINK.label).inputValue();
  const status = async (link: string) => (await context.request.get(link)).status();
  expect([await status(old), await status(made)]).toEqual([404, 200]);
});

it("saved settings are what the next owner reads", async () => {
  const page = await atShop();
  await page.getByRole("link", { name: SETTINGS.title }).click();
  await page.locator('[name="prices.byJob.slip-check.set-nut"]').fill("137.5");
  await page.getByLabel("Phone for urgent cases").fill("+1 202-555-0177");
  await page.getByRole("button", { name: SETTINGS.button }).click();
  await page.getByRole("status").filter({ hasText: "Saved as version" }).waitFor();

  const { context, visit } = await somebody();
  await postAnswers(context.request, { origin: shop().origin, owner: SLIP_CHECK });
  const verdict = await visit("/verdict");
  await verdict.getByRole("heading", { level: 1, name: SLIP_CHECK.verdict }).waitFor();
  expect(await verdict.getByRole("main").textContent()).toContain("$137.50");
  expect(await verdict.getByRole("link", { name: "Call +1 202-555-0177" }).getAttribute("href")).toBe(
    "tel:+12025550177",
  );
});

/** The arrivals, signed in. */
async function atShop(): Promise<Page> {
  const { context, visit } = await somebody({ viewport: DESKTOP });
  await signIn(context.request, shop());
  return visit("/shop");
}

const instantOf = async (time: Locator): Promise<number> => Date.parse((await time.getAttribute("datetime")) ?? "");

async function press(page: Page, name: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press("Enter");
}
