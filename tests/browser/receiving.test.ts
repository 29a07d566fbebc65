import type { BrowserContext, Page } from "playwright-core";
import { afterAll, expect, it } from "vitest";
import { MOVE, NEW_LINK, RECEIVED_OFF_TIME } from "#shared/messages/shop-change-words.ts";
import { DAY, DAY_GROUP } from "#shared/messages/shop-day-words.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import { MOVE_WORDS, MOVES, moveRefusedText } from "#shared/messages/shop-move-words.ts";
import { RECEIVE, RECEIVE_PROBLEM } from "#shared/messages/shop-receive-words.ts";
import { fakeCamera } from "#tests/browser/fake-camera.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { bookForCaller, holdForCaller } from "#tests/browser/shop-desk.ts";
import { SLIP_CHECK } from "#tests/support/owners.ts";
import { signIn } from "#tests/support/sign-in.ts";
import { visiting } from "#tests/support/visiting.ts";

const camera = fakeCamera();
afterAll(camera.putAway);
const { shop, somebody } = visiting({}, camera.flags);

it("scans a tag, receives the unit, and leads it along the day sheet", async () => {
  const page = await atShop();
  const { see, found } = looking(page);
  const number = await aJob(page);
  camera.show(`${shop().origin}/job/${number}`);
  await page.getByRole("link", { name: DAY.title, exact: true }).click();
  await see(DAY.noBenches);
  await page.getByRole("main").getByRole("link", { name: DAY.receive }).click();
  await see(RECEIVE.noTagHow);
  await page.getByRole("button", { name: RECEIVE.scan }).click();
  await page.getByRole("heading", { level: 1, name: RECEIVE.parcelTitle(number) }).waitFor();
  await see(RECEIVE.isEarly);
  await page.getByLabel(RECEIVE.remark).fill("Box was wet");
  await page.getByRole("button", { name: RECEIVE.received }).click();
  await see(RECEIVED_OFF_TIME.early);
  await page.getByRole("link", { name: MOVE.keep }).click();
  await see(`${JOB.state}: Received`);
  expect(await page.getByRole("table").last().textContent()).toContain("Box was wet");

  await page.getByRole("link", { name: DAY.title, exact: true }).click();
  const received = page.getByRole("region", { name: DAY_GROUP.received });
  await received.getByRole("button", { name: MOVE_WORDS.start.button }).click();
  await see(DAY.done(number, MOVE_WORDS.start.done));
  await page.getByRole("region", { name: DAY_GROUP["on-bench"] }).getByRole("link", { name: number }).click();
  await see(`${JOB.state}: On the bench`);
  await page.getByRole("button", { name: MOVE_WORDS.finish.button }).click();
  await see("The bench sheet is not complete.");
  await page.getByText(MOVES.more(MOVE_WORDS["set-aside"].button)).click();
  await see(MOVE_WORDS["set-aside"].asks ?? "");
  await page.getByRole("textbox", { name: MOVE_WORDS["set-aside"].asks ?? "" }).fill("Waits for a fixture");
  await page.getByRole("button", { name: MOVE_WORDS["set-aside"].button }).click();
  await see(MOVE_WORDS["set-aside"].done);
  expect(await page.getByText(moveRefusedText({ reason: "note-needed" })).count()).toBe(0);
  expect(found()).toEqual([]);
});

it("says so when the camera sees another code, and stops when it is told to", async () => {
  const page = await atShop();
  camera.show("https://parcels.example/track/12345");
  await page.getByRole("main").getByRole("link", { name: DAY.receive }).click();
  await page.getByRole("button", { name: RECEIVE.scan }).click();
  await page.getByText(RECEIVE.notATag).waitFor();
  await page.getByRole("button", { name: RECEIVE.stop }).click();
  await page.getByRole("button", { name: RECEIVE.scan }).waitFor();
  expect(await page.locator("#scan-video").isVisible()).toBe(false);
  // A tag of another shop is read, and refused with the reason.
  camera.show("https://other.example/job/16JD");
  await page.getByRole("button", { name: RECEIVE.scan }).click();
  await page.getByText(RECEIVE_PROBLEM["other-site"]).waitFor();
});

it("uses the browser's own detector where there is one", async () => {
  const { context, page } = await atWork();
  const number = await aJob(page);
  camera.show("not looked at");
  await context.addInitScript((text) => {
    class OwnDetector {
      static getSupportedFormats = async () => ["qr_code"];
      detect = async () => [{ rawValue: text }];
    }
    Object.assign(window, { BarcodeDetector: OwnDetector });
  }, `${shop().origin}/job/${number}`);
  await page.goto(`${shop().origin}/shop/receive`);
  await page.getByRole("button", { name: RECEIVE.scan }).click();
  await page.getByRole("heading", { level: 1, name: RECEIVE.parcelTitle(number) }).waitFor();
});

it("is typed in where the camera is not allowed, and where no script runs", async () => {
  const { context, page } = await atWork();
  const number = await aJob(page);
  await context.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = async () => Promise.reject(new DOMException("No", "NotAllowedError"));
  });
  await page.goto(`${shop().origin}/shop/receive`);
  await page.getByRole("button", { name: RECEIVE.scan }).click();
  await page.getByText(RECEIVE.noCamera).waitFor();
  await typeIn(page, number);

  const plain = await somebody({ javaScriptEnabled: false });
  await signIn(plain.context.request, shop());
  const other = await plain.visit("/shop/receive");
  expect(await other.getByRole("button", { name: RECEIVE.scan }).count()).toBe(0);
  await typeIn(other, number.toLowerCase());
});

it("shows a late slip of the hand, an early parcel and an unbooked one without fault", async () => {
  const page = await atShop();
  const { see, found } = looking(page);
  const number = await aJob(page);
  const [first = "", second = "", ...rest] = number;
  await page.goto(`${shop().origin}/shop/receive/find?number=${[second, first, ...rest].join("")}`);
  await see(RECEIVE_PROBLEM["check-symbol-wrong"]);
  await page.getByRole("link", { name: number }).click();
  await see(RECEIVE.said);
  await page.goto(`${shop().origin}/shop/receive`);
  await page.getByRole("link", { name: RECEIVE.bookIn }).click();
  await see("What is left at “Not sure”, or empty, is taken as the worst likely case.");
  expect(found()).toEqual([]);
});

async function typeIn(page: Page, number: string): Promise<void> {
  await page.getByLabel(RECEIVE.number, { exact: true }).fill(number);
  await page.getByRole("button", { name: RECEIVE.find }).click();
  await page.getByRole("heading", { level: 1, name: RECEIVE.parcelTitle(number.toUpperCase()) }).waitFor();
}

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

async function atWork(): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
  const { context, visit } = await somebody();
  await bringInspector(context);
  await signIn(context.request, shop());
  return { context, page: await visit("/shop") };
}

const atShop = async (): Promise<Page> => (await atWork()).page;

/** Books for a caller. @returns the job number */
async function aJob(page: Page): Promise<string> {
  await holdForCaller(page, SLIP_CHECK);
  await bookForCaller(page, "Tansy Marl");
  await page.getByLabel(NEW_LINK.label).waitFor();
  return /\w+$/.exec((await page.getByRole("heading", { level: 1 }).textContent()) ?? "")?.[0] ?? "";
}
