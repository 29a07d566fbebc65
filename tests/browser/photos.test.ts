import exifr from "exifr";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { LONG_SIDE_PX } from "#shared/job/photo.ts";
import { SENDING } from "#shared/messages/photo-sending-words.ts";
import { PHOTO_PAGE } from "#shared/messages/photo-words.ts";
import { aUnitReceived, openStep, stepAt } from "#tests/browser/bench-desk.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { exifSegment, JPEG, withSegments } from "#tests/support/photos.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

const TABLET = { width: 820, height: 1180 };
const SHAFT = '[data-photo-of="inspect/shaft"]';

async function atBench(options: object = {}) {
  const desk = await somebody({ viewport: TABLET });
  const number = await aUnitReceived(desk.context, shop());
  const { context } = await somebody({ viewport: TABLET, ...options });
  await context.addCookies(await desk.context.cookies());
  await bringInspector(context);
  const page = await context.newPage();
  const open = (path: string) => page.goto(`${shop().origin}/shop/jobs/${number}/${path}`);
  return { context, page, number, open };
}

/** What a phone makes: large, with all that it knows of its owner. */
async function taken(page: Page): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const plain = await page.evaluate(() => {
    const canvas = Object.assign(document.createElement("canvas"), { width: 3000, height: 2000 });
    const paper = canvas.getContext("2d") as CanvasRenderingContext2D;
    for (let x = 0; x < 3000; x += 50) {
      paper.fillStyle = `hsl(${x / 9} 80% 50%)`;
      paper.fillRect(x, 0, 50, 2000);
    }
    return canvas.toDataURL("image/jpeg", 0.9).split(",")[1] ?? "";
  });
  const bytes = withSegments(new Uint8Array(Buffer.from(plain, "base64")), exifSegment(6));
  return { name: "IMG_0042.JPG", mimeType: "image/jpeg", buffer: Buffer.from(bytes) };
}

/** The photos of the shaft on the sheet. */
const shaftPhotos = (page: Page) => page.locator(".photos", { has: page.locator(SHAFT) }).locator("img");

const sizeOf = (page: Page, src: string) =>
  page.evaluate(async (at) => {
    const picture = await createImageBitmap(await (await fetch(at)).blob());
    return [picture.width, picture.height];
  }, src);

async function bytesAt(page: Page, src: string): Promise<Buffer> {
  const answer = await page.context().request.get(`${shop().origin}${src}`);
  expect(answer.status()).toBe(200);
  return answer.body();
}

it("a photo of one part: smaller, upright, with nothing of its owner in it, and what was ticked is still ticked", async () => {
  const { page, number, open } = await atBench();
  await open("sheet");
  await openStep(page, "inspect");
  await stepAt(page, "inspect").locator('input[name="parts.shaft.condition"][value=broken]').check();
  const photo = await taken(page);
  expect(await exifr.gps(photo.buffer)).toBeDefined();
  await page.locator(SHAFT).setInputFiles(photo);
  await shaftPhotos(page).waitFor();
  await page.getByText(SENDING.sent).first().waitFor();
  const src = (await shaftPhotos(page).getAttribute("src")) ?? "";
  // It was taken with the phone held upright.
  expect(await sizeOf(page, src)).toEqual([Math.round((LONG_SIDE_PX * 2) / 3), LONG_SIDE_PX]);
  const bytes = await bytesAt(page, src);
  expect(bytes.length).toBeLessThan(photo.buffer.length);
  expect(await exifr.parse(bytes, { tiff: true, exif: true, gps: true, xmp: true, iptc: true })).toBeUndefined();
  expect(await page.locator('input[name="parts.shaft.condition"][value=broken]').isChecked()).toBe(true);

  await open("photos");
  expect(await page.locator(".photo-list img").count()).toBe(1);
  expect(await inspectPage(page, "photos of a job")).toEqual([]);
  const made = await page.context().request.post(`${shop().origin}/shop/jobs/${number}/link`, {
    headers: { origin: shop().origin },
    form: { generation: "1" },
  });
  const [, token = ""] = /\/tag\/([\w-]{22})"/.exec(await made.text()) ?? [];
  const owner = await somebody();
  const owners = await owner.visit(`/tag/${token}`);
  const seen = await sizeOf(owners, `/tag/${token}/photos/${src.split("/").at(-1)}`);
  expect(seen).toEqual([Math.round((LONG_SIDE_PX * 2) / 3), LONG_SIDE_PX]);
  const shops = await owner.context.request.get(`${shop().origin}${src}`);
  expect(shops.status()).toBe(401);
});

it("without a network a photo waits on the device, over a reload too, and is sent once there is one", async () => {
  const { context, page, number, open } = await atBench();
  await open("sheet");
  await openStep(page, "inspect");
  const photo = await taken(page);
  await context.setOffline(true);
  await page.locator(SHAFT).setInputFiles(photo);
  await page.getByText(SENDING.waiting(1)).first().waitFor();
  expect(await shaftPhotos(page).count()).toBe(0);
  await page.close();
  await context.setOffline(false);
  const again = await context.newPage();
  await again.goto(`${shop().origin}/shop/jobs/${number}/sheet?step=inspect`);
  await shaftPhotos(again).waitFor({ state: "attached" });
  expect(await shaftPhotos(again).count()).toBe(1);
});

it("says what is accepted where a file is no photo, and keeps nothing of it", async () => {
  const { page, open } = await atBench();
  await open("sheet");
  await openStep(page, "inspect");
  await page.locator(SHAFT).setInputFiles({ name: "a.jpg", mimeType: "image/jpeg", buffer: Buffer.from("no photo") });
  await page.getByText("Accepted: a JPEG, PNG or WebP photo").first().waitFor();
  await page.reload();
  expect(await shaftPhotos(page).count()).toBe(0);
});

it("without a script, by a plain form: the photo stays upright though nobody made it smaller", async () => {
  const { page, open, context } = await atBench({ javaScriptEnabled: false });
  await open("sheet?step=inspect");
  const link = stepAt(page, "inspect").getByRole("link", { name: PHOTO_PAGE.add }).first();
  await link.click();
  await page.getByLabel(PHOTO_PAGE.take).setInputFiles({
    name: "a.jpg",
    mimeType: "image/jpeg",
    buffer: Buffer.from(withSegments(JPEG, exifSegment(6))),
  });
  await page.getByRole("button", { name: PHOTO_PAGE.send }).click();
  await page.getByText(PHOTO_PAGE.added).waitFor();
  const src = (await page.locator(".photo-list img").getAttribute("src")) ?? "";
  expect(await exifr.parse(await bytesAt(page, src), { tiff: true, gps: true })).toEqual({
    Orientation: "Rotate 90 CW",
  });
  const scripted = await somebody();
  await scripted.context.addCookies(await context.cookies());
  expect(await sizeOf(await scripted.visit("/shop"), src)).toEqual([8, 16]);
  await page.getByRole("button", { name: /Remove the photo/ }).click();
  await page.getByText(PHOTO_PAGE.removed).waitFor();
  expect(await page.locator(".photo-list img").count()).toBe(0);
});

it("the pages of parts are fit for everybody", async () => {
  const { page, open } = await atBench();
  await open("");
  for (const path of ["/shop/parts", "/shop/parts/order", "/shop/parts/lock-nut/set-nut"]) {
    await page.goto(`${shop().origin}${path}`);
    expect(await inspectPage(page, path)).toEqual([]);
  }
});
