import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { aJob, someAnswers } from "#tests/bench/a-job.ts";
import {
  type Browser,
  fieldValue,
  fresh,
  MONDAY,
  type Page,
  setClock,
  signedIn,
  WARM_UP,
  wordsOf,
} from "#tests/bench/the-shop.ts";

let staff: Browser;
const shop = () => env.SHOP.getByName("main");
const NUT = "/shop/parts/lock-nut/set-nut";

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
  await count(10);
});

/** Counts the lock nuts, so that each test starts from a known shelf. */
const count = (found: number) =>
  shop().countParts({
    shelf: { part: "lock-nut", family: "set-nut" },
    found,
    staff: "Ines",
    note: "a test",
    key: fresh(),
  });
const nuts = async () =>
  (await shop().stock()).find(({ part, family }) => part === "lock-nut" && family === "set-nut")!;

async function aJobHere() {
  const { number } = await aJob({ answers: someAnswers({ unitFamily: "set-nut" }) });
  const wish = { number, move: "receive", staff: "Ines", note: null, ifState: "booked" } as const;
  expect((await shop().moveJob(wish)).ok).toBe(true);
  return number;
}

/** The form behind a button, as a browser would send it. */
function formOf({ text }: Page, action: string, label: string) {
  const form = [...text.matchAll(/<form\b[^>]*action="([^"]*)"[^>]*>(.*?)<\/form>/gs)].find(
    ([, to, inside]) => to?.endsWith(action) && inside?.includes(`aria-label="${label}"`),
  );
  if (form === undefined) throw new Error(`No button ${label}`);
  const fields = [...form[2]!.matchAll(/name="(\w+)" value="([^"]*)"/g)].map(([, name, value]) => [name!, value!]);
  return { to: form[1]!, fields: Object.fromEntries(fields) as Record<string, string> };
}

describe("the shelves", () => {
  it("show what is in doubt and what is low first, and what each job wants of them", async () => {
    await count(0);
    const { number } = await aJob({ answers: someAnswers({ unitFamily: "set-nut" }) });
    const line = await nuts();
    expect(line).toMatchObject({ onHand: 0, low: true, free: -line.reserved });
    const words = wordsOf(await staff.get("/shop/parts"));
    expect(words.indexOf("Lock nut set nut")).toBeLessThan(words.indexOf("Lock nut shim stack"));
    expect(words).toContain(`Lock nut set nut 0 ${line.reserved} -${line.reserved}`);
    const order = wordsOf(await staff.get("/shop/parts/order"));
    expect(order).toMatch(new RegExp(`${line.order} Lock nut \\(set nut\\) 0 jobs? [^.]*${number}`));
  });

  it("take parts in once, however often the form is sent", async () => {
    const wish = fieldValue(await staff.get(NUT), "wish");
    const form = { wish, count: "7", from: "Delivery of Monday" };
    const page = await staff.post(`${NUT}/receive`, form);
    await staff.post(`${NUT}/receive`, form);
    expect(wordsOf(page)).toContain("The parts are on the shelf.");
    expect(wordsOf(page)).toMatch(/Received \+7 17 .* Delivery of Monday/);
    expect((await nuts()).onHand).toBe(17);
  });

  it("are put right by a count, with a word of why", async () => {
    const page = await staff.post(`${NUT}/count`, { wish: fresh(), found: "4", why: "Six lay in the wrong box" });
    expect(wordsOf(page)).toMatch(/Counted -6 4 .* Six lay in the wrong box/);
    expect((await nuts()).onHand).toBe(4);
  });

  it.each([
    ["receive", { count: "0" }, "from 1 to 999"],
    ["receive", { count: "some" }, "from 1 to 999"],
    ["receive", { count: "1000" }, "from 1 to 999"],
    ["count", { found: "-1", why: "lost" }, "from 0 to 9999"],
    ["count", { found: "3", why: " " }, "a few words"],
  ])("change nothing for %s %j, and say what is accepted", async (what, form, accepted) => {
    const page = await staff.post(`${NUT}/${what}`, { wish: fresh(), ...form });
    expect(page.status).toBe(422);
    expect(wordsOf(page)).toContain(accepted);
    expect((await nuts()).onHand).toBe(10);
  });

  it("are those of the catalogue, and no others", async () => {
    for (const path of ["/shop/parts/lock-nut/any", "/shop/parts/rudder/set-nut"]) {
      expect((await staff.get(path)).status).toBe(404);
      expect((await staff.post(`${path}/receive`, { count: "1" })).status).toBe(404);
    }
  });
});

describe("the parts of a job", () => {
  it("are used by one touch, and taken back by another, each in the history", async () => {
    const number = await aJobHere();
    const reserved = (await nuts()).reserved;
    const page = await staff.get(`/shop/jobs/${number}`);
    const use = formOf(page, "/use", "Used 1: Lock nut");
    const used = await staff.post(use.to, use.fields);
    await staff.post(use.to, use.fields);
    expect(await nuts()).toMatchObject({ onHand: 9, reserved: reserved - 1 });
    expect(wordsOf(used)).toContain("Laid out 1 · Used 1 · On the shelf: 9");
    const back = formOf(used, "/take-back", "Take 1 back: Lock nut");
    const taken = await staff.post(back.to, back.fields);
    expect(await nuts()).toMatchObject({ onHand: 10, reserved });
    expect(wordsOf(taken)).toContain("Lock nut × 1");
    const job = await shop().job(number);
    expect(job!.history.slice(-2).map(({ what }) => what)).toEqual(["part-used", "part-use-undone"]);
    expect((await staff.post(back.to, { ...back.fields, wish: fresh() })).status).toBe(409);
  });

  it("are used though the book knows of none, which is said at once and until somebody counts", async () => {
    await count(0);
    const number = await aJobHere();
    const { to, fields } = formOf(await staff.get(`/shop/jobs/${number}`), "/use", "Used 1: Lock nut");
    const used = wordsOf(await staff.post(to, fields));
    expect(used).toContain("The book knows of fewer than that, so count the shelf again.");
    expect(used).toContain("On the shelf: -1 Count again");
    await shop().receiveParts({
      shelf: { part: "lock-nut", family: "set-nut" },
      count: 5,
      staff: "Ines",
      note: null,
      key: fresh(),
    });
    expect(wordsOf(await staff.get("/shop/parts"))).toMatch(/Lock nut set nut 4 \d+ -?\d+ Count again/);
    await count(5);
    expect(wordsOf(await staff.get(NUT))).not.toContain("Count again");
  });

  it("grow by what the inspection finds, and shrink by what is not needed", async () => {
    const number = await aJobHere();
    const form = { wish: fresh(), shelf: "shaft/", count: "1" };
    const added = await staff.post(`/shop/jobs/${number}/parts/add`, form);
    expect(wordsOf(added)).toContain("Shaft Added at the bench. Laid out 1 · Used 0");
    const shaft = async () =>
      (await shop().stock()).find(({ part, family }) => part === "shaft" && family === "set-nut")!;
    const before = (await shaft()).reserved;
    const away = formOf(added, "/put-away", "Not needed: Shaft");
    expect(wordsOf(await staff.post(away.to, away.fields))).toContain("Shaft Added at the bench. Laid out 0 · Used 0");
    expect((await shaft()).reserved).toBe(before - 1);
    expect((await staff.post(away.to, { ...away.fields, wish: fresh() })).status).toBe(409);
    expect((await staff.post(`/shop/jobs/${number}/parts/add`, { ...form, wish: fresh(), count: "99" })).status).toBe(
      422,
    );
    expect(
      (await staff.post(`/shop/jobs/${number}/parts/add`, { ...form, wish: fresh(), shelf: "shim-washers/" })).status,
    ).toBe(409);
  });

  it("are not used before the unit is here", async () => {
    const { number } = await aJob();
    const page = await staff.get(`/shop/jobs/${number}`);
    expect(page.text).not.toContain("/parts/use");
    const form = { wish: fresh(), shelf: "lock-nut/set-nut", count: "1" };
    expect((await staff.post(`/shop/jobs/${number}/parts/use`, form)).status).toBe(409);
  });

  it("come from the shelf of the build that the bench found, where the owner did not know it", async () => {
    const { number } = await aJob({ answers: someAnswers({ unitFamily: "unknown" }) });
    const nut = async () => (await shop().jobParts(number))!.find(({ part }) => part === "lock-nut")!.shelves;
    expect((await nut()).map(({ family }) => family)).toEqual(["shim-stack", "set-nut"]);
    await shop().moveJob({ number, move: "receive", staff: "Ines", note: null, ifState: "booked" });
    await shop().moveJob({ number, move: "start", staff: "Ines", note: null, ifState: "received" });
    const entry = { kind: "inspect", parts: {}, unitFamily: "shim-stack", boostPsi: null, serial: null } as const;
    const written = await shop().keepEntry({
      number,
      step: "inspect",
      entry,
      staff: "Ines",
      by: null,
      key: fresh(),
      ifVersion: 0,
    } as never);
    expect(written).toMatchObject({ ok: true });
    expect((await nut()).map(({ family }) => family)).toEqual(["shim-stack"]);
  });
});
