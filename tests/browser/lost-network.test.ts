import type { APIRequestContext, BrowserContext, Page, Route } from "playwright-core";
import { expect, it } from "vitest";
import { OFFLINE, SAID, WAITING } from "#shared/messages/owner-words.ts";
import {
  answerAll,
  answerOne,
  bookIt,
  holdFirstOffer,
  postAnswers,
  untilAsked,
  writeContact,
} from "#tests/support/owner-walk.ts";
import { NOT_DUE, SLIP_CHECK } from "#tests/support/owners.ts";
import { signIn } from "#tests/support/sign-in.ts";
import { until } from "#tests/support/until.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

it("an owner who loses the network answers on to the end, and the verdict comes with it again", async () => {
  const { context, visit: open } = await somebody();
  const page = await open();
  const received = countReceived(context);
  for (let given = 0; given < 3; given += 1) await answerOne(page, SLIP_CHECK);
  await untilReceived(received, 3);
  await context.setOffline(true);
  await answerToTheEnd(page);
  expect(await page.getByRole("status").first().textContent()).toBe(OFFLINE.kept);
  expect(await page.title()).toContain(WAITING.title);
  const lines = await page.locator(".tag-lines").textContent();
  await context.setOffline(false);
  await page.getByRole("heading", { level: 1, name: SLIP_CHECK.verdict }).waitFor();
  expect(new URL(page.url()).pathname).toBe("/verdict");
  expect(await page.locator(".tag-lines").textContent()).toBe(lines);
  expect([...received.values()]).toEqual(Object.keys(SLIP_CHECK.says).map(() => 1));
});

it("an owner without network can still change an answer while the verdict is awaited", async () => {
  const { context, visit: open } = await somebody();
  const page = await open();
  await answerOne(page, SLIP_CHECK);
  await context.setOffline(true);
  await answerToTheEnd(page);
  await page.getByRole("link", { name: "Ridden Gently" }).click();
  await untilAsked(page, "riding");
  await page.getByLabel("Hard", { exact: true }).check();
  await page.getByRole("button", { name: "Next" }).click();
  await page.getByRole("heading", { level: 1, name: WAITING.title }).waitFor();
  await context.setOffline(false);
  await page.getByRole("heading", { level: 1, name: SLIP_CHECK.verdict }).waitFor();
  await page.getByRole("link", { name: "Ridden Hard" }).waitFor();
});

it("two tabs that come back together send one conversation", async () => {
  const { context, visit: open } = await somebody();
  const [first, second] = [await open(), await open()];
  await Promise.all([formsCame(first), formsCame(second)]);
  await first.bringToFront();
  const received = countReceived(context);
  await context.setOffline(true);
  await answerToTheEnd(first);
  await context.setOffline(false);
  await first.getByRole("heading", { level: 1, name: SLIP_CHECK.verdict }).waitFor();
  await second.goto(`${shop().origin}/verdict`);
  expect(await second.locator(".tag-lines").textContent()).toBe(await first.locator(".tag-lines").textContent());
  expect([...received.values()]).toEqual(Object.keys(SLIP_CHECK.says).map(() => 1));
});

it("on a slow network no step waits for the one before, and a reload in between loses nothing", async () => {
  const { context, visit: open } = await somebody();
  const page = await open();
  const received = countReceived(context);
  let isOpen = false;
  await context.route("**/intake/*", async (route) => {
    if (route.request().method() === "POST") await until(() => isOpen, 60_000);
    await route.continue().catch(() => {});
  });
  for (let given = 0; given < 4; given += 1) await answerOne(page, SLIP_CHECK);
  await untilAsked(page, "riding");
  expect(received.size).toBe(0);
  const lines = await page.locator(".tag-lines").textContent();
  await page.reload();
  await untilAsked(page, "riding");
  expect(await page.locator(".tag-lines").textContent()).toBe(lines);
  isOpen = true;
  await untilReceived(received, 4);
  await answerAll(page, SLIP_CHECK);
  expect(await page.locator(".tag-lines").textContent()).toContain(lines);
});

it("an answer that the site could not take is kept, told and sent again", async () => {
  const { context, visit: open } = await somebody();
  const page = await open();
  const received = countReceived(context);
  const fail = (route: Route) => route.fulfill({ status: 429, body: "" });
  await context.route("**/intake/symptoms", fail);
  await answerOne(page, SLIP_CHECK);
  await page.getByText(OFFLINE.kept).waitFor();
  await answerOne(page, SLIP_CHECK);
  await context.unroute("**/intake/symptoms", fail);
  await answerToTheEnd(page);
  await page.getByRole("heading", { level: 1, name: SLIP_CHECK.verdict }).waitFor();
  expect([...received.values()]).toEqual(Object.keys(SLIP_CHECK.says).map(() => 1));
});

it("a form that the site refuses for now stands as it was, with the reason in sight", async () => {
  const { page } = await atConfirm();
  await writeContact(page);
  const refuse = (route: Route) =>
    route.fulfill({ status: 429, contentType: "text/html", body: "<main><h1>No</h1><p>Wait a minute.</p></main>" });
  await page.route("**/confirm", refuse);
  await page.getByRole("button", { name: "Book it" }).click();
  await page.getByRole("status").filter({ hasText: "Wait a minute." }).waitFor();
  expect(await page.getByLabel("Your name").inputValue()).toBe("Ada Quill");
  await page.unroute("**/confirm", refuse);
  await bookIt(page);
});

it("booking without network says so in sight, keeps what was typed, and books once when it is back", async () => {
  const { context, page } = await atConfirm();
  await writeContact(page);
  await context.setOffline(true);
  await page.getByRole("button", { name: "Book it" }).click();
  await page.getByText(SAID.nothingSent).waitFor();
  const told = await page.getByText(SAID.nothingSent).boundingBox();
  expect(told?.y).toBeGreaterThanOrEqual(0);
  expect(told?.y).toBeLessThan(page.viewportSize()?.height ?? 0);
  expect(await page.getByLabel("Your name").inputValue()).toBe("Ada Quill");
  await context.setOffline(false);
  await bookIt(page);
});

it("when only the answer to a booking is lost, the second try leads to the same job", async () => {
  const { page } = await atConfirm();
  await writeContact(page);
  await page.route(
    "**/confirm",
    async (route) => {
      await route.fetch({ maxRedirects: 0 });
      await route.abort();
    },
    { times: 1 },
  );
  const { context: staff } = await somebody();
  await signIn(staff.request, shop());
  const before = await countJobs(staff.request);
  await page.getByRole("button", { name: "Book it" }).click();
  await page.getByText(SAID.nothingSent).waitFor();
  expect(await countJobs(staff.request)).toBe(before + 1);
  await bookIt(page);
  expect(await countJobs(staff.request)).toBe(before + 1);
});

/** Answers what is left, of a craft whose verdict cannot come yet. */
async function answerToTheEnd(page: Page): Promise<void> {
  const waiting = page.getByRole("heading", { level: 1, name: new RegExp(`${WAITING.title}|${SLIP_CHECK.verdict}`) });
  while (!(await waiting.isVisible())) await answerOne(page, SLIP_CHECK);
}

/** How often each answer was taken by the shop. */
function countReceived(context: BrowserContext): ReadonlyMap<string, number> {
  const received = new Map<string, number>();
  context.on("response", (response) => {
    const { pathname } = new URL(response.url());
    if (response.request().method() !== "POST" || !response.ok()) return;
    received.set(pathname, (received.get(pathname) ?? 0) + 1);
  });
  return received;
}

const untilReceived = (received: ReadonlyMap<string, number>, count: number): Promise<void> =>
  until(() => received.size === count, 30_000);

const formsCame = (page: Page): Promise<void> =>
  until(() => page.evaluate(() => performance.getEntriesByName(`${origin}/intake/questions`).length > 0));

async function atConfirm() {
  const { context, visit: open } = await somebody();
  await postAnswers(context.request, { origin: shop().origin, owner: NOT_DUE });
  const page = await open("/verdict");
  await holdFirstOffer(page);
  return { context, page };
}

/** As the shop sees it. */
async function countJobs(staff: APIRequestContext): Promise<number> {
  const arrivals = await staff.get(`${shop().origin}/shop`);
  return (await arrivals.text()).split('href="/shop/jobs/').length - 1;
}
