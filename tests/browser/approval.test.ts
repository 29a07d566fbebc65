import type { BrowserContextOptions, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { APPROVAL, APPROVAL_DONE, APPROVAL_ENDED, ASKED_ON_TAG } from "#shared/messages/approval-words.ts";
import { STANDING } from "#shared/messages/job-standing-words.ts";
import { ASK_DONE, ASKING } from "#shared/messages/shop-approval-words.ts";
import { NEW_LINK } from "#shared/messages/shop-change-words.ts";
import { TAG_WORDS } from "#shared/messages/tag-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { bookForCaller, holdForCaller } from "#tests/browser/shop-desk.ts";
import { DESKTOP } from "#tests/support/browser.ts";
import { SLIP_CHECK } from "#tests/support/owners.ts";
import { signIn } from "#tests/support/sign-in.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

const WAYS = [
  ["with the script", {}],
  ["without a script", { javaScriptEnabled: false }],
] as const;

describe.each<(typeof WAYS)[number]>(WAYS)("%s", (_way, options) => {
  it("the shop asks, and the owner approves", async () => {
    const { bench, owner, ask } = await aUnitOnTheBench(options);
    await ask("The friction washers are worn through.");
    await owner.reload();
    await owner.getByRole("heading", { name: ASKED_ON_TAG.title }).waitFor();
    await owner.getByRole("link", { name: ASKED_ON_TAG.link }).click();
    await owner.getByText("The friction washers are worn through.").waitFor();
    await owner.getByRole("button", { name: APPROVAL.yes("$425.00") }).click();
    await owner.getByText(APPROVAL_DONE.approved).waitFor();
    await owner.getByText(APPROVAL_ENDED.approved).waitFor();
    expect(await owner.getByRole("button", { name: APPROVAL.no }).count()).toBe(0);
    await owner.getByRole("link", { name: APPROVAL.backToTag }).click();
    await owner.getByRole("heading", { name: STANDING.title }).waitFor();
    const tag = await owner.getByRole("main").textContent();
    expect(tag).toContain(WORK_WORDS["full-rebuild"]);
    expect(tag).toContain("$425.00");
    expect(tag).not.toContain(TAG_WORDS.packTitle);
    await bench.reload();
    await bench.getByText("Approved by the owner").waitFor();
  });

  it("the shop asks, the owner asks back, is answered, and declines", async () => {
    const { bench, owner, ask } = await aUnitOnTheBench(options);
    await ask("The gear shows heat marks.");
    await owner.goto(`${owner.url()}/approval`);
    await owner.getByText(APPROVAL.ask).click();
    await owner.getByLabel(APPROVAL.askLabel).fill("Can it wait until autumn?");
    await owner.getByRole("button", { name: APPROVAL.askButton }).click();
    await owner.getByText(APPROVAL_DONE.asked).waitFor();
    await bench.reload();
    await bench.getByText("Can it wait until autumn?").waitFor();
    await bench.getByLabel(ASKING.reply).fill("Better not. It may break.");
    await bench.getByRole("button", { name: ASKING.replyButton }).click();
    await bench.getByText(ASK_DONE.replied).waitFor();
    await owner.reload();
    await owner.getByText("Better not. It may break.").waitFor();
    await owner.getByRole("button", { name: APPROVAL.no }).click();
    await owner.getByText(APPROVAL_DONE.declined).waitFor();
    await bench.reload();
    await bench.getByText("Declined by the owner").waitFor();
  });
});

it("every page of it is free of faults that a machine can find", async () => {
  const { bench, owner, ask } = await aUnitOnTheBench({});
  const found = [...(await inspectPage(bench, "the empty question"))];
  await bench.locator("[name=until]").fill("2020-01-01");
  await bench.getByRole("button", { name: ASKING.button, exact: true }).click();
  await bench.getByRole("heading", { name: ASKING.mend(1) }).waitFor();
  found.push(...(await inspectPage(bench, "the question to mend")));
  await bench.locator("[name=until]").fill(inDays(3));
  await ask("The friction washers are worn through.");
  found.push(...(await inspectPage(bench, "the question as the shop sees it")));
  await owner.reload();
  found.push(...(await inspectPage(owner, "the tag that asks")));
  await owner.getByRole("link", { name: ASKED_ON_TAG.link }).click();
  await owner.getByText(APPROVAL.ask).click();
  found.push(...(await inspectPage(owner, "the question as the owner sees it")));
  const stale = await owner.context().newPage();
  await stale.goto(owner.url());
  await owner.getByRole("button", { name: APPROVAL.no }).click();
  await owner.getByText(APPROVAL_DONE.declined).waitFor();
  found.push(...(await inspectPage(owner, "the question that was answered")));
  // A second tab that still shows the question: nothing happens, and it says so.
  await stale.getByRole("button", { name: APPROVAL.yes("$425.00") }).click();
  await stale.getByRole("alert").filter({ hasText: APPROVAL_ENDED.declined }).waitFor();
  expect(found).toEqual([]);
});

const inDays = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

/** A slip check on the bench: the shop's page on which its owner is asked, and the owner's page on a phone. */
async function aUnitOnTheBench(options: BrowserContextOptions) {
  const { origin } = shop();
  const desk = await somebody({ viewport: DESKTOP });
  await bringInspector(desk.context);
  await signIn(desk.context.request, shop());
  const page = await desk.visit("/shop");
  await holdForCaller(page, SLIP_CHECK);
  await bookForCaller(page, "Tansy Marl");
  const [number = ""] = (await page.getByRole("heading", { level: 1 }).textContent())?.match(/\w+$/) ?? [];
  const link = await page.getByLabel(NEW_LINK.label).inputValue();
  for (const [move, ifState] of [
    ["receive", "booked"],
    ["start", "received"],
  ]) {
    const form = { move: move ?? "", ifState: ifState ?? "" };
    await desk.context.request.post(`${origin}/shop/jobs/${number}/state`, { headers: { origin }, form });
  }
  const bench = await withOptions(options, `/shop/jobs/${number}/approval`, true);
  const owner = await withOptions(options, link.slice(origin.length), false);
  const ask = async (why: string) => {
    await bench.getByRole("radio", { name: WORK_WORDS["full-rebuild"] }).first().check();
    await bench.getByLabel(ASKING.why).fill(why);
    await bench.getByRole("button", { name: ASKING.button, exact: true }).click();
    await bench.getByText(ASK_DONE.asked).waitFor();
  };
  return { bench, owner, ask };
}

async function withOptions(options: BrowserContextOptions, path: string, isShop: boolean): Promise<Page> {
  const { context, visit } = await somebody(isShop ? { viewport: DESKTOP, ...options } : options);
  await bringInspector(context);
  if (isShop) await signIn(context.request, shop());
  return visit(path);
}
