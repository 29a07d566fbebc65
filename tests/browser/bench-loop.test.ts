import type { Page } from "playwright-core";
import { afterAll, expect, it } from "vitest";
import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import type { SheetPlan } from "#shared/job/sheet-plan.ts";
import { APPROVAL, APPROVAL_DONE, ASKED_ON_TAG } from "#shared/messages/approval-words.ts";
import { CHECK, STANDING_WORDS } from "#shared/messages/check-words.ts";
import { PASSKEY_FORM } from "#shared/messages/passkey-words.ts";
import { PHOTO_PAGE } from "#shared/messages/photo-words.ts";
import { RECORD } from "#shared/messages/record-words.ts";
import { SHEET, UNSENT } from "#shared/messages/sheet-page-words.ts";
import { ASK_DONE, ASKING } from "#shared/messages/shop-approval-words.ts";
import { MOVE } from "#shared/messages/shop-change-words.ts";
import { DAY, DAY_GROUP } from "#shared/messages/shop-day-words.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import { MOVE_WORDS } from "#shared/messages/shop-move-words.ts";
import { RECEIVE } from "#shared/messages/shop-receive-words.ts";
import { SIGN_IN, SIGN_OUT } from "#shared/messages/shop-sign-in-words.ts";
import { ACCOUNT, STAFF_DONE } from "#shared/messages/shop-staff-words.ts";
import { JOB_PARTS, STOCK } from "#shared/messages/stock-words.ts";
import { keysOf } from "#src/local/keys.ts";
import { byName, signInLink } from "#src/local/sign-in-link.ts";
import { giveAuthenticator } from "#tests/browser/an-authenticator.ts";
import { DULL_STEPS, fillStep, keepStep, openStep, stepAt } from "#tests/browser/bench-desk.ts";
import { fakeCamera } from "#tests/browser/fake-camera.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { bookIt, holdFirstOffer, postAnswers, writeContact } from "#tests/support/owner-walk.ts";
import { SLIP_CHECK } from "#tests/support/owners.ts";
import { JPEG } from "#tests/support/photos.ts";
import { visiting } from "#tests/support/visiting.ts";

const TABLET = { width: 820, height: 1180 };
const WHO = "Wren Calloway";

const camera = fakeCamera();
afterAll(camera.putAway);
const { shop, somebody } = visiting({}, camera.flags);
/** Passkeys need an address with a name. */
const at = (path: string): string => `${byName(shop().origin)}${path}`;

it("a unit comes for a slip check, turns out to need a rebuild, and goes home with a record", {
  timeout: 300_000,
}, async () => {
  const owner = await ownersPhone();
  const { number, tag } = await book(owner);
  await look(owner, "owner-tag-booked");

  const bench = await benchTablet();
  await enrol(bench);
  await signOutAndIn(bench);
  await putOnShelf(bench, "lock-nut/set-nut", 4);

  await receiveByCode(bench, number);
  await readAsFound(bench, number);
  await photograph(bench, number);
  await askOwner(bench, number);
  await approve(owner, tag);

  await rebuildWithoutNetworkMidway(bench, number);
  await proveFinalSlip(bench);
  await useLockNut(bench, number);
  await finishAndShip(bench, number);
  await readRecord(owner, tag, number);
  await readBooks(bench, number);
  expect(faults).toEqual([]);
});

const faults: string[] = [];

/** Everybody can use the page as it stands; PICTURES=folder keeps a picture of it, for people to look at. */
async function look(page: Page, name: string): Promise<void> {
  const folder = process.env["PICTURES"];
  if (folder) await page.screenshot({ path: `${folder}/${name}.png`, fullPage: !name.startsWith("sheet") });
  // Beside everything: the number keys, which lie over what is below them, go away.
  await page.mouse.click(1, 1);
  faults.push(...(await inspectPage(page, name)));
}

async function ownersPhone(): Promise<Page> {
  const { context } = await somebody();
  await bringInspector(context);
  await postAnswers(context.request, { origin: byName(shop().origin), owner: SLIP_CHECK });
  return context.newPage();
}

async function book(owner: Page): Promise<{ number: string; tag: string }> {
  await owner.goto(at("/verdict"));
  await holdFirstOffer(owner);
  await writeContact(owner);
  const number = await bookIt(owner);
  return { number, tag: new URL(owner.url()).pathname };
}

async function benchTablet(): Promise<Page> {
  const { context } = await somebody({ viewport: TABLET });
  await bringInspector(context);
  const page = await context.newPage();
  await giveAuthenticator(page);
  return page;
}

async function enrol(bench: Page): Promise<void> {
  await bench.goto(await signInLink(byName(shop().origin), keysOf(shop().dataDir).LINK_KEY));
  await bench.getByRole("button", { name: SIGN_IN.button }).click();
  await bench.getByText(ACCOUNT.welcome).waitFor();
  await look(bench, "account-welcome");
  await bench.getByLabel(ACCOUNT.name, { exact: true }).fill(WHO);
  await bench.getByRole("button", { name: ACCOUNT.rename }).click();
  await bench.getByText(STAFF_DONE.renamed).waitFor();
  await bench.getByLabel(PASSKEY_FORM.label).fill("Bench tablet");
  await bench.getByRole("button", { name: PASSKEY_FORM.add }).click();
  await bench.getByText(STAFF_DONE.added).waitFor();
}

async function signOutAndIn(bench: Page): Promise<void> {
  await bench.getByRole("button", { name: SIGN_OUT.button, exact: true }).click();
  await bench.getByText(SIGN_OUT.says).waitFor();
  await look(bench, "signed-out");
  await bench.getByRole("button", { name: PASSKEY_FORM.signIn }).click();
  await bench.getByRole("heading", { level: 1, name: DAY.title }).waitFor();
  await look(bench, "today");
}

async function putOnShelf(bench: Page, shelf: string, count: number): Promise<void> {
  await bench.goto(at(`/shop/parts/${shelf}`));
  await bench.getByLabel(STOCK.howMany, { exact: true }).fill(String(count));
  await bench.getByRole("button", { name: STOCK.receiveButton }).click();
  await bench.getByText(STOCK.received).waitFor();
  await look(bench, "shelf-received");
}

async function receiveByCode(bench: Page, number: string): Promise<void> {
  camera.show(at(`/job/${number}`));
  await bench.goto(at("/shop/receive"));
  await look(bench, "receive");
  await bench.getByRole("button", { name: RECEIVE.scan }).click();
  await bench.getByRole("heading", { level: 1, name: RECEIVE.parcelTitle(number) }).waitFor();
  await look(bench, "receive-parcel");
  await bench.getByRole("button", { name: RECEIVE.received }).click();
  await bench.getByRole("link", { name: MOVE.keep }).click();
  await bench.getByText(`${JOB.state}: Received`).waitFor();
  await bench.goto(at("/shop"));
  await look(bench, "today-received");
  await bench
    .getByRole("region", { name: DAY_GROUP.received })
    .getByRole("button", { name: MOVE_WORDS.start.button })
    .click();
  await bench.getByText(DAY.done(number, MOVE_WORDS.start.done)).waitFor();
}

const FOUND = { readings: ["12.1", "12.2", "12.1"], breakaway: ["14"] };
const WRENCH = { "tool.accuracyPercent": ["1"], "tool.resolution": ["0.05"] };

/** A slip check's first steps; the gear is seen to be worn through the opening. */
async function readAsFound(bench: Page, number: string): Promise<void> {
  await bench.goto(at(`/shop/jobs/${number}/sheet`));
  await look(bench, "sheet-as-found");
  await fillStep(bench, "as-found-slip", { ...FOUND, ...WRENCH });
  await look(bench, "sheet-as-found-filled");
  await keepStep(bench, "as-found-slip");
  await stepAt(bench, "inspect").and(bench.locator("[open]")).waitFor();
  await judgeParts(bench, "drive-gear", "Two teeth worn hollow");
  await look(bench, "sheet-inspect");
  await keepStep(bench, "inspect");
  await untilDone(bench, "inspect");
}

/** Every part that is asked for is good, but one. */
async function judgeParts(bench: Page, worn: string, note: string): Promise<void> {
  const inspect = stepAt(bench, "inspect");
  for (const good of await inspect.locator("input[value=good]").all()) await good.check();
  await inspect.locator(`[name="parts.${worn}.condition"][value=worn]`).check();
  const field = inspect.locator(`[name="parts.${worn}.note"]`);
  const folded = inspect.locator("fieldset", { has: bench.locator(`[name="parts.${worn}.note"]`) }).locator("summary");
  if (!(await field.isVisible())) await folded.click();
  await field.fill(note);
}

const untilDone = (page: Page, step: string): Promise<void> =>
  page.locator(`[data-step="${step}"][data-standing="done"]:not([data-unsent])`).waitFor();

async function photograph(bench: Page, number: string): Promise<void> {
  await bench.goto(at(`/shop/jobs/${number}/photos?of=inspect%2Fdrive-gear#add`));
  const file = { name: "gear.jpg", mimeType: "image/jpeg", buffer: Buffer.from(JPEG) };
  await bench.getByLabel(PHOTO_PAGE.take).setInputFiles(file);
  await bench.getByRole("button", { name: PHOTO_PAGE.send }).click();
  await bench.getByText(PHOTO_PAGE.added).waitFor();
  await look(bench, "photos");
}

async function askOwner(bench: Page, number: string): Promise<void> {
  await bench.goto(at(`/shop/jobs/${number}`));
  await look(bench, "job-on-bench");
  await bench.getByRole("link", { name: ASKING.open }).click();
  expect(await bench.getByRole("radio", { name: /^Full rebuild/ }).isChecked()).toBe(true);
  expect(await bench.getByLabel(ASKING.why).inputValue()).toContain("Worn: drive gear");
  await bench.getByRole("group", { name: ASKING.photo }).getByRole("radio").last().check();
  await look(bench, "ask-owner");
  await bench.getByRole("button", { name: ASKING.button }).click();
  await bench.getByText(ASK_DONE.asked).waitFor();
  await look(bench, "asked");
}

async function approve(owner: Page, tag: string): Promise<void> {
  await owner.goto(at(tag));
  await owner.getByRole("heading", { name: ASKED_ON_TAG.title }).waitFor();
  await look(owner, "owner-tag-asked");
  await owner.getByRole("link", { name: ASKED_ON_TAG.link }).click();
  const photo = owner.getByAltText(APPROVAL.photo);
  expect(await photo.evaluate((it) => (it as HTMLImageElement).naturalWidth)).toBe(16);
  await look(owner, "owner-approval");
  await owner.getByRole("button", { name: /^Yes, do it for/ }).click();
  await owner.getByText(APPROVAL_DONE.approved).waitFor();
  await look(owner, "owner-approved");
}

/** The sheet goes on with a rebuild's steps. Three of them are written without the network, over a reload. */
async function rebuildWithoutNetworkMidway(bench: Page, number: string): Promise<void> {
  await bench.goto(at(`/shop/jobs/${number}/sheet`));
  expect(await bench.locator("[data-step]").count()).toBe(DULL_STEPS.length);
  await stepAt(bench, "inspect").and(bench.locator("[open]")).waitFor();
  await judgeParts(bench, "drive-gear", "Two teeth worn hollow");
  await keepStep(bench, "inspect");
  await untilDone(bench, "inspect");
  await bench.evaluate(() => navigator.serviceWorker.ready);
  await bench.context().setOffline(true);
  for (const step of ["needles-out", "needles-in"] as const) await write(bench, step);
  await stepAt(bench, "needles-in").getByText(UNSENT.pending).waitFor();
  await bench.reload();
  await stepAt(bench, "needles-out").getByText(UNSENT.pending).waitFor();
  await write(bench, "spring-washers");
  await look(bench, "sheet-offline");
  await bench.context().setOffline(false);
  for (const step of ["needles-out", "needles-in", "spring-washers"]) await untilDone(bench, step);
  for (const step of ["plate-recess", "impeller"] as const) await write(bench, step);
  await leaveOut(bench, "screws");
}

const LEFT_OUT = "New screws are on their way";

async function leaveOut(bench: Page, step: SheetStepId): Promise<void> {
  await openStep(bench, step);
  await stepAt(bench, step).getByText(SHEET.skip).click();
  await stepAt(bench, step).getByLabel(SHEET.skipWhy).fill(LEFT_OUT);
  await look(bench, "sheet-left-out");
  await stepAt(bench, step).getByRole("button", { name: SHEET.skipButton }).click();
  await bench.locator(`[data-step="${step}"][data-standing="skipped"]`).waitFor();
}

async function write(bench: Page, step: SheetStepId): Promise<void> {
  const [, fields = {}] = DULL_STEPS.find(([id]) => id === step) ?? [];
  await openStep(bench, step);
  await fillStep(bench, step, fields);
  await keepStep(bench, step);
}

/** By the figures that the plan goes by: set before the lock nut, and left in the middle of the band. */
async function proveFinalSlip(bench: Page): Promise<void> {
  const plan = JSON.parse((await bench.locator("[data-sheet]").getAttribute("data-plan")) ?? "") as SheetPlan;
  const { set } = plan.beforeLock!;
  const { low, high } = plan.aim!.band;
  const middle = (low + high) / 2;
  await openStep(bench, "slip-before-lock");
  const tries = [set - 2.2, set].map((slip) => slip.toFixed(2));
  await fillStep(bench, "slip-before-lock", { "tries.nutDegrees": ["180", "230"], "tries.slip": tries });
  await look(bench, "sheet-before-lock");
  await keepStep(bench, "slip-before-lock");
  await write(bench, "lock-nut");
  const readings = [middle, middle + 0.05, middle].map((slip) => slip.toFixed(2));
  await openStep(bench, "final-slip");
  await fillStep(bench, "final-slip", { readings });
  const dial = stepAt(bench, "final-slip").locator("[data-dial]");
  expect(await dial.getAttribute("data-decision")).toBe("accept");
  await look(bench, "sheet-final");
  await keepStep(bench, "final-slip");
  await write(bench, "turn-by-hand");
  await bench.getByText(SHEET.complete).waitFor();
  await look(bench, "sheet-complete");
}

async function useLockNut(bench: Page, number: string): Promise<void> {
  await bench.goto(at(`/shop/jobs/${number}`));
  await bench.getByRole("button", { name: JOB_PARTS.touch(JOB_PARTS.use(1, null), "Lock nut") }).click();
  const line = bench.locator("#parts li", { hasText: "Lock nut" });
  await line.getByText(`${JOB_PARTS.shelf}: 3`).waitFor();
  await look(bench, "job-parts-used");
}

async function finishAndShip(bench: Page, number: string): Promise<void> {
  await bench.goto(at(`/shop/jobs/${number}`));
  await bench.getByRole("button", { name: MOVE_WORDS.finish.button }).click();
  await bench.getByText(MOVE_WORDS.finish.done).waitFor();
  await bench.getByRole("button", { name: MOVE_WORDS.ship.button }).click();
  await bench.getByText(MOVE_WORDS.ship.done).waitFor();
  await look(bench, "job-shipped");
}

async function readRecord(owner: Page, tag: string, number: string): Promise<void> {
  await owner.goto(at(tag));
  await look(owner, "owner-tag-shipped");
  await owner.getByRole("link", { name: RECORD.title }).click();
  await owner.getByRole("heading", { level: 1, name: `${RECORD.title} ${number}` }).waitFor();
  const record = owner.getByRole("article");
  await record.getByText("Lock nut × 1").waitFor();
  await record.getByText(WHO).waitFor();
  await record.getByText(LEFT_OUT).waitFor();
  await look(owner, "owner-record");
  const code = (await owner.locator("a.code").textContent())?.trim() ?? "";
  await owner.goto(at("/check"));
  await owner.getByLabel(CHECK.code, { exact: true }).fill(code);
  await owner.getByRole("button", { name: CHECK.check }).click();
  await owner.getByRole("heading", { level: 1, name: STANDING_WORDS.genuine.title }).waitFor();
  await look(owner, "check-genuine");
}

/** The history has every turn of the story beside who took it; the shelf says where its part went. */
async function readBooks(bench: Page, number: string): Promise<void> {
  await bench.goto(at("/shop/parts/lock-nut/set-nut"));
  const used = bench.getByRole("row").filter({ hasText: `${STOCK.job} ${number}` });
  expect(await used.textContent()).toMatch(new RegExp(`-1.*3.*${WHO}`));
  await look(bench, "shelf-used");
  await bench.goto(at(`/shop/jobs/${number}`));
  const history = (await bench.getByRole("table").last().getByRole("row").allTextContents()).join("\n");
  const told = [
    "Booked",
    "Received",
    "Put on the bench",
    "Waiting for the owner to decide",
    "Approved the work",
    "Shipped",
  ];
  for (const what of told) expect(history).toContain(what);
  expect(history.split(WHO).length).toBeGreaterThan(told.length);
}
