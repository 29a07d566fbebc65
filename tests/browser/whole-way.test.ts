import ICAL from "ical.js";
import type { BrowserContextOptions, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { SAID } from "#shared/messages/owner-words.ts";
import { QUESTION_WORDS } from "#shared/messages/question-words.ts";
import { TAG_LABELS } from "#shared/messages/tag-lines.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import { DESKTOP, PHONE } from "#tests/support/browser.ts";
import {
  answerAll,
  answerOne,
  bookIt,
  holdFirstOffer,
  type Owner,
  postAnswers,
  writeContact,
} from "#tests/support/owner-walk.ts";
import { FULL_REBUILD, NOT_DUE, SLIP_CHECK, STOP_RIDING } from "#tests/support/owners.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody, visit } = visiting();

/** Every verdict by both ways, and each way on both screens. */
const WALKS = [
  { owner: STOP_RIDING, withScript: PHONE, without: DESKTOP },
  { owner: FULL_REBUILD, withScript: DESKTOP, without: PHONE },
  { owner: SLIP_CHECK, withScript: PHONE, without: DESKTOP },
  { owner: NOT_DUE, withScript: DESKTOP, without: PHONE },
];

it("in a shop with all benches free, an urgent job is offered sooner than any other", async () => {
  const firstOffer = async (owner: Owner) => {
    const page = await atVerdict(owner);
    return new Date((await page.locator(".offer time").first().getAttribute("datetime")) ?? "").getTime();
  };
  expect(await firstOffer(STOP_RIDING)).toBeLessThan(await firstOffer(SLIP_CHECK));
});

describe.each(WALKS)("$owner.who", ({ owner, withScript, without }) => {
  it(`comes from the first answer to a job tag without a reload, on ${withScript.width} px`, async () => {
    const page = await visit({ viewport: withScript });
    await markWindow(page);
    let asked = 0;
    await answerAll(page, owner, async (question) => {
      await expectShown(page, QUESTION_WORDS[question].asks);
      if (asked > 0) {
        expect(new URL(page.url()).pathname).toBe(`/intake/${question}`);
        expect(await focusedText(page)).toBe(QUESTION_WORDS[question].asks);
      }
      expect(await page.locator(".tag-lines li").count()).toBe(asked);
      asked += 1;
    });
    expect(new URL(page.url()).pathname).toBe("/verdict");
    expect(await focusedText(page)).toBe(owner.verdict);
    await holdFirstOffer(page);
    expect(await focusedText(page)).toBe("Book the time we hold for you");
    await writeContact(page);
    expect(readJobNumber(await bookIt(page)).ok).toBe(true);
    expect(await isMarked(page)).toBe(true);
  });

  it(`gets there by plain pages where there is no script, on ${without.width} px`, async () => {
    const page = await visit({ viewport: without, javaScriptEnabled: false });
    await answerAll(page, owner, (question) => expectShown(page, QUESTION_WORDS[question].asks));
    await holdFirstOffer(page);
    await writeContact(page);
    expect(readJobNumber(await bookIt(page)).ok).toBe(true);
    expect(await page.getByRole("button", { name: "Print the tag" }).isVisible()).toBe(false);
  });
});

describe.each([
  ["with", true],
  ["without", false],
])("%s the script", (_, javaScriptEnabled) => {
  it("the tag prints each answer as it is given", async () => {
    const page = await visit({ javaScriptEnabled });
    for (const [label, value] of [
      [TAG_LABELS.symptoms, "None of these"],
      [TAG_LABELS.unitFamily, "Set nut"],
      [TAG_LABELS.builtYear, /^\d{4}$/],
      [TAG_LABELS.engineHours, "60 h"],
      [TAG_LABELS.riding, "Gently"],
      [TAG_LABELS.engineModified, "No"],
      [TAG_LABELS.chargerModified, "Yes"],
      [TAG_LABELS.boost, "1.1 bar"],
    ] as const) {
      await answerOne(page, SLIP_CHECK);
      const line = page.locator(".tag-lines li").last();
      expect(await line.locator("span").textContent()).toBe(label);
      expect(await line.locator("b").textContent()).toMatch(value);
    }
  });

  it("a symptom that ends the ride says so on the tag at once, and the verdict has a number to call first", async () => {
    const page = await visit({ javaScriptEnabled });
    const stop = page.getByText("Stop riding. Do not start the engine.");
    expect(await stop.isVisible()).toBe(false);
    await answerOne(page, STOP_RIDING);
    await stop.waitFor();
    await postAnswers(page.request, { origin: shop().origin, owner: STOP_RIDING });
    await page.goto(`${shop().origin}/verdict`);
    const call = page.getByRole("link", { name: "Call the shop now" });
    expect(await call.getAttribute("href")).toBe("tel:+12025550100");
    const [callTop, offerTop] = await Promise.all([topOf(call), topOf(page.getByText("Hold bench time").first())]);
    expect(callTop).toBeLessThan(offerTop);
  });

  it("a craft that is not due gets the date for its owner's calendar", async () => {
    const page = await atVerdict(NOT_DUE, { javaScriptEnabled });
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name: "Put the due date in your calendar" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("service-due.ics");
    const event = await eventIn(download);
    expect(event.summary).toContain("due");
    expect(event.startDate.toJSDate().getTime()).toBeGreaterThan(Date.now());
    expect(event.description).toContain(shop().origin);
  });
});

it.each([
  ["peeks out with its last lines on a phone", PHONE, false],
  ["hangs beside the question in full on a desktop", DESKTOP, true],
])("the tag %s", async (_, viewport, inFull) => {
  const page = await atVerdict(STOP_RIDING, { viewport });
  const stop = page.getByText("Stop riding. Do not start the engine.");
  const [window, first, last] = await Promise.all(
    [page.locator(".tag-window"), page.getByRole("link", { name: "Noticed" }), stop].map((it) => it.boundingBox()),
  );
  const isShown = (it: typeof first) => it!.y >= window!.y && it!.y + it!.height <= window!.y + window!.height + 1;
  expect(isShown(last!)).toBe(true);
  expect(isShown(first!)).toBe(inFull);
});

it("two minutes before the held time ends the owner is told how to keep it", async () => {
  const { context, visit: open } = await somebody();
  await context.clock.install();
  await postAnswers(context.request, { origin: shop().origin, owner: SLIP_CHECK });
  const page = await open("/verdict");
  await holdFirstOffer(page);
  await context.clock.runFor(12.5 * 60_000);
  expect(await page.getByText(SAID.twoMinutes).count()).toBe(0);
  await context.clock.runFor(60_000);
  await page.getByText(SAID.twoMinutes).waitFor();
  expect(await page.getByRole("button", { name: "Hold it longer" }).isEnabled()).toBe(true);
});

it("the booked slot goes into a calendar, with the link to the job", async () => {
  const page = await atVerdict(SLIP_CHECK);
  await holdFirstOffer(page);
  await writeContact(page);
  const number = await bookIt(page);
  const shown = await page.locator("article time").getAttribute("datetime");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Put it in my calendar" }).click(),
  ]);
  const event = await eventIn(download);
  expect(event.startDate.toJSDate().toISOString()).toBe(shown);
  expect(event.summary).toContain(number);
  expect(event.description).toContain(page.url().replace(/\?.*/, ""));
});

it("an owner moves the job, then cancels it, by the tag's own link", async () => {
  const page = await atVerdict(SLIP_CHECK);
  await holdFirstOffer(page);
  await writeContact(page);
  await bookIt(page);
  const before = await page.locator("article time").getAttribute("datetime");
  await page.getByText("Move it to another time").click();
  await page.getByRole("button", { name: "Move to this time" }).last().click();
  await page.getByText("Moved. The tag shows the new time.").waitFor();
  expect(await page.locator("article time").getAttribute("datetime")).not.toBe(before);
  await page.getByText("Cancel the job").click();
  await page.getByRole("button", { name: "Yes, cancel it" }).click();
  await page.getByRole("heading", { level: 1, name: "Cancelled job" }).waitFor();
});

async function atVerdict(owner: Owner, options?: BrowserContextOptions): Promise<Page> {
  const { context, visit: open } = await somebody(options);
  await postAnswers(context.request, { origin: shop().origin, owner });
  return open("/verdict");
}

async function expectShown(page: Page, heading: string): Promise<void> {
  expect(await page.title()).toContain(heading);
  expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe(heading);
}

const focusedText = (page: Page): Promise<string | null> => page.locator(":focus").textContent();
const topOf = async (it: ReturnType<Page["locator"]>): Promise<number> => (await it.boundingBox())?.y ?? Number.NaN;

/** A mark on the window goes with any reload. */
const markWindow = (page: Page) => page.evaluate(() => Object.assign(window, { marked: true }));
const isMarked = (page: Page): Promise<boolean> => page.evaluate(() => "marked" in window);

async function eventIn(download: { createReadStream: () => Promise<NodeJS.ReadableStream> }): Promise<ICAL.Event> {
  let text = "";
  for await (const part of await download.createReadStream()) text += String(part);
  const calendar = new ICAL.Component(ICAL.parse(text));
  const event = calendar.getFirstSubcomponent("vevent");
  if (event === null) throw new Error(`No event in:\n${text}`);
  return new ICAL.Event(event);
}
