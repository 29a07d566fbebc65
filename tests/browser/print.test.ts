import jsQR from "jsqr";
import type { BrowserContextOptions, Page } from "playwright-core";
import { beforeAll, expect, it } from "vitest";
import { TAG_WORDS } from "#shared/messages/tag-words.ts";
import { DESKTOP, PHONE } from "#tests/support/browser.ts";
import { bookIt, holdFirstOffer, postAnswers, writeContact } from "#tests/support/owner-walk.ts";
import { STOP_RIDING } from "#tests/support/owners.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

let number: string;
let tag: string;
beforeAll(async () => {
  const { context, visit } = await somebody();
  await postAnswers(context.request, { origin: shop().origin, owner: STOP_RIDING });
  const page = await visit("/verdict");
  await holdFirstOffer(page);
  await writeContact(page);
  number = await bookIt(page);
  tag = new URL(page.url()).pathname;
});

const openTag = async (options: BrowserContextOptions = {}): Promise<Page> => (await somebody(options)).visit(tag);

/** Width and height as a PDF's MediaBox gives them, in points. */
const PAPER = [
  { format: "Letter", box: [612, 792] },
  { format: "A4", box: [595, 842] },
] as const;

it("on paper there is the tag with all that the parcel needs, and nothing to press", async () => {
  const page = await openTag();
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  const article = page.getByRole("article");
  expect(await article.getByRole("heading", { level: 1 }).textContent()).toContain(number);
  expect(await article.getByRole("img", { name: `QR code of job ${number}` }).isVisible()).toBe(true);
  expect(await article.locator("address").textContent()).toContain("4 Slipway Lane");
  for (const line of [...TAG_WORDS.pack, ...TAG_WORDS.box]) expect(await page.getByText(line).isVisible()).toBe(true);
  const pressed = "button, a, input, nav, header, details, summary, [role=status]";
  for (const it of await page.locator(pressed).all()) expect(await it.isVisible()).toBe(false);
  const colours = await article.evaluate((it) => [getComputedStyle(it).backgroundColor, getComputedStyle(it).color]);
  expect(colours).toEqual(["rgb(255, 255, 255)", "rgb(0, 0, 0)"]);
});

it.each(PAPER)("the tag prints on $format, on at most three sheets", async ({ format, box }) => {
  const page = await openTag();
  const pdf = (await page.pdf({ format })).toString("latin1");
  const boxes = [...pdf.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
  expect(boxes.length).toBe(pdf.match(/\/Type\s*\/Page\b/g)?.length);
  expect(boxes.length).toBeGreaterThan(0);
  expect(boxes.length).toBeLessThanOrEqual(3);
  for (const [, width, height] of boxes) {
    expect(Math.abs(Number(width) - box[0])).toBeLessThan(2);
    expect(Math.abs(Number(height) - box[1])).toBeLessThan(2);
  }
});

it.each([
  ["a phone", PHONE],
  ["a desktop", DESKTOP],
])("the QR code on the screen of %s names the job, and nothing else", async (_, viewport) => {
  for (const colorScheme of ["light", "dark"] as const) {
    const page = await openTag({ viewport, colorScheme });
    expect(await readQr(page)).toBe(`${shop().origin}/job/${number}`);
  }
});

/** Reads the code off the screen, as a camera does. */
async function readQr(page: Page): Promise<string | undefined> {
  const png = await page.locator(".qr").screenshot();
  const { width, height, dark } = await page.evaluate(
    async (source) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height);
      const context = canvas.getContext("2d")!;
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, image.width, image.height);
      const dark = Array.from({ length: data.length / 4 }, (_, pixel) => (data[pixel * 4]! < 128 ? "1" : "0"));
      return { width: image.width, height: image.height, dark: dark.join("") };
    },
    `data:image/png;base64,${png.toString("base64")}`,
  );
  const pixels = [...dark].flatMap((isDark) => (isDark === "1" ? [0, 0, 0, 255] : [255, 255, 255, 255]));
  return jsQR(Uint8ClampedArray.from(pixels), width, height)?.data;
}
