import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, expect, it } from "vitest";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import { type TypedSettings, writeSettings } from "#src/bench/settings/settings-form.ts";
import { type Browser, fieldValue, MONDAY, setClock, signedIn, WARM_UP, wordsOf } from "#tests/bench/the-shop.ts";

let staff: Browser;

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});

const now = () => env.SHOP.getByName("main").settings();

/** The form as it comes, with some entries typed over. */
async function save(change: TypedSettings) {
  const { version, settings } = await now();
  return staff.post("/shop/settings", { ...writeSettings(settings), ifVersion: String(version), ...change });
}

it("shows every setting as it is, with its source where there is one", async () => {
  const page = await staff.get("/shop/settings");
  expect(page.status).toBe(200);
  for (const [name, value] of Object.entries(writeSettings(DEMO_SHOP))) {
    expect(page.text).toContain(`name="${name}"`);
    if (!value.includes("\n")) expect(page.text).toContain(value);
  }
  expect(fieldValue(page, "prices.byJob.full-rebuild.set-nut")).toBe("425.00");
  expect(fieldValue(page, "calendar.weekly.1")).toBe("08:00-17:00");
  expect(fieldValue(page, "calendar.weekly.7")).toBe("");
  const words = wordsOf(page);
  expect(words).toContain("Months between rebuilds, whatever the hours Source of the default: common practice");
  expect(words).toContain("ISO 14253-1:2017");
  expect(words).toMatch(/Version \d+, saved/);
});

it("changes nothing when it is saved as it came, but makes a version", async () => {
  const before = await now();
  const page = await save({});
  expect(wordsOf(page)).toContain(`Saved as version ${before.version + 1}`);
  expect(await now()).toEqual({ version: before.version + 1, savedAt: MONDAY, settings: before.settings });
});

it("saves what was typed over, as people type it", async () => {
  const page = await save({
    "front.name": "North Shore Bench",
    "front.shipTo.lines": "North Shore Bench\r\n\r\n 9 Pier Road ",
    "calendar.weekly.3": "8:00 - 12:00, 13:00–17:00",
    "calendar.weekly.5": "",
    "calendar.closures": "2027-07-04..2027-07-05 Holiday\n2027-12-24",
    "calendar.benches": "b1 Bench by the window\nb2 Bench 2\nb3 New bench",
    "calendar.minutes.slip-check": "75",
    "prices.byJob.slip-check.set-nut": "130.5",
    "bench.needles.set-nut": "25",
    "bench.orderAheadDays": "28",
    "triage.rebuildHours": "180",
    "slip.lockNutRise": "1.25",
  });
  expect(page.status).toBe(200);
  expect(wordsOf(page)).toContain("North Shore Bench");
  const { front, calendar, prices, bench, triage, slip } = (await now()).settings;
  expect(front.shipTo.lines).toEqual(["North Shore Bench", "9 Pier Road"]);
  expect(calendar.weekly[3]).toEqual([
    { opens: "08:00", closes: "12:00" },
    { opens: "13:00", closes: "17:00" },
  ]);
  expect(calendar.weekly[5]).toEqual([]);
  expect(calendar.closures).toEqual([
    { from: "2027-07-04", to: "2027-07-05", why: "Holiday" },
    { from: "2027-12-24", to: "2027-12-24", why: "" },
  ]);
  expect(calendar.benches.map(({ name }) => name)).toEqual(["Bench by the window", "Bench 2", "New bench"]);
  expect(calendar.minutes["slip-check"]).toBe(75);
  expect(prices.byJob["slip-check"]["set-nut"]).toBe(13_050);
  expect([bench.needles["set-nut"], bench.needles["shim-stack"], bench.orderAheadDays]).toEqual([25, null, 28]);
  expect([triage.rebuildHours, slip.lockNutRise]).toEqual([180, 1.25]);
});

it.each([
  ["front.name", "", "characters"],
  ["front.email", "nobody", "an email address"],
  ["front.country", "USA", "Two capital letters"],
  ["front.shipTo.lines", "", "1 to 4"],
  ["calendar.zone", "Ottersby/Lake", "a time zone of the IANA database"],
  ["calendar.weekly.2", "8 to 5", "times on the quarter-hour"],
  ["calendar.weekly.2", "08:10-17:00", "quarter-hour"],
  ["calendar.weekly.2", "17:00-08:00", "later than the opening"],
  ["calendar.weekly.2", "13:00-17:00, 08:00-12:00", "openings in order"],
  ["calendar.closures", "Fourth of July", "one a line"],
  ["calendar.closures", "2027-02-30 Never", "a date that exists"],
  ["calendar.closures", "2027-07-05..2027-07-04", "or later"],
  ["calendar.benches", "", "a list of 1 to 8"],
  ["calendar.benches", "b1", "one a line"],
  ["calendar.benches", "b1 One\nb1 Two", "no bench id twice"],
  ["calendar.minutes.full-rebuild", "245", "a multiple of 15"],
  ["calendar.minutes.stop-riding", "720", "at most 540"],
  ["calendar.leadWorkingDays.urgent", "9", "at most the standard lead"],
  ["calendar.holdMinutes", "0", "from 1 to 120"],
  ["calendar.openHoldsPerSource", "many", "a number, such as 12.5"],
  ["prices.currency", "dollars", "three capital letters"],
  ["prices.byJob.slip-check.unknown", "1,250", "an amount"],
  ["prices.byJob.slip-check.unknown", "-5", "an amount"],
  ["prices.usualDays.stop-riding", "2.5", "a whole number from 1 to 90"],
  ["front.locale", "English", "a language tag"],
  ["bench.needles.shim-stack", "none", "empty = not known"],
  ["bench.needles.shim-stack", "201", "from 1 to 200"],
  ["bench.spareParts", "101", "from 0 to 100"],
  ["triage.rebuildMonths", "0", "from 1 to 120"],
  ["triage.willNotHoldHours", "", "a number"],
  ["slip.gentleHigh", "11", "more than “Slip of a standard craft ridden gently, from"],
  ["slip.ceilingSetNut", "12", "the highest slip with a standard charger"],
  ["slip.lockNutRise", "1.505", "a multiple of 0.01"],
])("refuses %s = %j beside the field, and keeps all that was typed", async (field, typed, accepted) => {
  const before = await now();
  const page = await save({ [field]: typed, "front.phone": "+1 202-555-0177" });
  expect(page.status).toBe(422);
  expect(page.text).toContain(`<a href="#${field}">`);
  const [, beside = ""] = page.text.split(`id="${field}.problem"`);
  expect(wordsOf({ ...page, text: `<p${beside.slice(0, beside.indexOf("</p>"))}` })).toContain(accepted);
  expect(fieldValue(page, "front.phone")).toBe("+1 202-555-0177");
  expect(await now()).toEqual(before);
});

it("refuses a save over somebody else's, keeps what was typed, and takes it the second time", async () => {
  const { version, settings } = await now();
  const mine = { ...writeSettings(settings), ifVersion: String(version), "front.name": "Mine" };
  await save({ "front.name": "Theirs" });
  const refused = await staff.post("/shop/settings", mine);
  expect(refused.status).toBe(409);
  expect(wordsOf(refused)).toContain(`Somebody saved version ${version + 1}`);
  expect(fieldValue(refused, "front.name")).toBe("Mine");
  expect((await now()).settings.front.name).toBe("Theirs");
  const saved = await staff.post("/shop/settings", { ...mine, ifVersion: fieldValue(refused, "ifVersion") });
  expect(saved.status).toBe(200);
  expect((await now()).settings.front.name).toBe("Mine");
});

it("does not save a form that names no version", async () => {
  const before = await now();
  const page = await staff.post("/shop/settings", writeSettings(before.settings));
  expect(page.status).toBe(409);
  expect(await now()).toEqual(before);
});

it("takes no form of another site's page", async () => {
  const before = await now();
  const form = { ...writeSettings(before.settings), ifVersion: String(before.version), "front.name": "Taken over" };
  expect((await staff.post("/shop/settings", form, { "sec-fetch-site": "cross-site" })).status).toBe(403);
  expect(await now()).toEqual(before);
});
