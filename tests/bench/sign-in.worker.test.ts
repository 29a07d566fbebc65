import { exports } from "cloudflare:workers";
import { beforeAll, beforeEach, expect, it } from "vitest";
import {
  Browser,
  HERE,
  MINUTE,
  MONDAY,
  setClock,
  signedIn,
  signInPath,
  WARM_UP,
  wordsOf,
} from "#tests/bench/the-shop.ts";

beforeAll(...WARM_UP);
beforeEach(() => void setClock(MONDAY));

const SHOP_PAGES = [
  "/shop",
  "/shop/find?number=10000",
  "/shop/jobs/10000",
  "/shop/book",
  "/shop/book/abc",
  "/shop/settings",
];

it.each(SHOP_PAGES)("shows %s to nobody who is not signed in, and says how to sign in", async (path) => {
  const page = await new Browser().get(path);
  expect(page.status).toBe(401);
  expect(wordsOf(page)).toContain("npm run sign-in");
});

it.each(["/shop/settings", "/shop/book", "/shop/jobs/10000/cancel"])(
  "takes no form at %s from a stranger",
  async (path) => {
    expect((await new Browser().post(path, { ifVersion: "1" })).status).toBe(401);
  },
);

it("signs a device in by the link's button, once", async () => {
  const link = await signInPath();
  const first = new Browser();
  const arrived = await first.post(link);
  expect(arrived).toMatchObject({ status: 200, path: "/shop/account?welcome" });
  const second = new Browser();
  const refused = await second.post(link);
  expect(refused.status).toBe(401);
  expect(wordsOf(refused)).toContain("has been used");
  expect((await second.get("/shop")).status).toBe(401);
  expect((await first.get("/shop")).status).toBe(200);
});

it("is not used up by a look at the link, as previews do", async () => {
  const link = await signInPath();
  const preview = new Browser();
  expect((await preview.get(link)).status).toBe(200);
  expect((await preview.get(link)).status).toBe(200);
  expect((await preview.get("/shop")).status).toBe(401);
  expect((await new Browser().post(link)).path).toBe("/shop/account?welcome");
});

it("refuses a link that has ended, on the look and on the button", async () => {
  const link = await signInPath();
  setClock(MONDAY + 10 * MINUTE);
  for (const page of [await new Browser().get(link), await new Browser().post(link)]) {
    expect(page.status).toBe(401);
    expect(wordsOf(page)).toContain("has ended");
    expect(wordsOf(page)).toContain("npm run sign-in");
  }
});

it("refuses a link that is forged, cut short or made for something else", async () => {
  const link = await signInPath();
  const links = [
    `${link.slice(0, -1)}${link.endsWith("A") ? "B" : "A"}`,
    link.slice(0, -5),
    await signInPath({ purpose: "show-owner-link" }),
  ];
  for (const wrong of links) {
    const page = await new Browser().post(wrong);
    expect(page.status).toBe(401);
    expect(wordsOf(page)).toContain("not a sign-in link");
  }
});

it("gives a cookie that no script reads and no other site sends", async () => {
  const link = `${HERE}${await signInPath()}`;
  const answer = await exports.default.fetch(link, { method: "POST", redirect: "manual" });
  expect(answer.status).toBe(303);
  const cookie = answer.headers.get("set-cookie");
  expect(cookie).toMatch(/^staff=[\w-]{22};/);
  expect(cookie?.split("; ")).toEqual(
    expect.arrayContaining(["HttpOnly", "SameSite=Strict", "Path=/", "Max-Age=1209600"]),
  );
});

it("ends after 12 hours without a touch", async () => {
  const staff = await signedIn();
  setClock(MONDAY + 12 * 60 * MINUTE - 1);
  expect((await staff.get("/shop")).status).toBe(200);
  setClock(MONDAY + 24 * 60 * MINUTE - 2);
  expect((await staff.get("/shop")).status).toBe(200);
  setClock(MONDAY + 36 * 60 * MINUTE);
  expect((await staff.get("/shop")).status).toBe(401);
});

it("ends after 14 days, however busy the device is", async () => {
  const staff = await signedIn();
  for (let hour = 0; hour < 14 * 24; hour += 8) {
    setClock(MONDAY + hour * 60 * MINUTE);
    expect((await staff.get("/shop")).status).toBe(200);
  }
  setClock(MONDAY + 14 * 24 * 60 * MINUTE);
  expect((await staff.get("/shop")).status).toBe(401);
});

it("signs out for good: the old cookie opens nothing", async () => {
  const staff = await signedIn();
  const { cookie } = staff;
  expect((await staff.post("/shop/sign-out")).path).toBe("/shop/signed-out");
  staff.cookie = cookie;
  expect((await staff.get("/shop")).status).toBe(401);
});

it("refuses what another site's page sends with the shop's cookie", async () => {
  const staff = await signedIn();
  const from = { "sec-fetch-site": "cross-site", origin: "https://elsewhere.example" };
  expect((await staff.post("/shop/sign-out", {}, from)).status).toBe(403);
  expect((await staff.get("/shop")).status).toBe(200);
});
