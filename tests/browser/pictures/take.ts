/** Takes the README's picture from a real shop: `node tests/browser/pictures/take.ts`. */
import { fileURLToPath } from "node:url";
import { openBrowser, PHONE } from "#tests/support/browser.ts";
import { answerAll, bookIt, holdFirstOffer, writeContact } from "#tests/support/owner-walk.ts";
import { STOP_RIDING } from "#tests/support/owners.ts";
import { startShop } from "#tests/support/running-shop.ts";

const PICTURE = fileURLToPath(import.meta.resolve("#tests/browser/pictures/owner.png"));

const shop = await startShop();
const browser = await openBrowser();
const page = await browser.newPage({ viewport: PHONE });
const taken: string[] = [];
const take = async () => taken.push((await page.screenshot({ type: "png" })).toString("base64"));

await page.goto(shop.origin);
await answerAll(page, STOP_RIDING, async (question) => {
  if (question === "unitFamily") await take();
});
await page.locator("h1").waitFor();
await take();
await holdFirstOffer(page);
await writeContact(page);
await bookIt(page);
await take();

const wall = await browser.newPage({ viewport: { width: 3 * PHONE.width + 80, height: PHONE.height + 40 } });
await wall.setContent(
  `<body style="margin:20px;display:flex;gap:20px;background:#fff">${taken
    .map((png) => `<img style="border:1px solid #999" src="data:image/png;base64,${png}">`)
    .join("")}</body>`,
);
await wall.screenshot({ path: PICTURE });
await browser.close();
await shop.stop();
