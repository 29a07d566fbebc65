import { beforeAll, beforeEach, expect, it } from "vitest";
import { aJob, someAnswers } from "#tests/bench/a-job.ts";
import { Browser, fieldValue, MINUTE, MONDAY, setClock, signedIn, WARM_UP, wordsOf } from "#tests/bench/the-shop.ts";

let staff: Browser;

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});

const tagOf = async (token: string) => (await new Browser().get(`/tag/${token}`)).status;

it("shows all that the bench needs: verdict, reasons, suspects, slip, parts, people and money", async () => {
  const { number } = await aJob({
    answers: someAnswers({
      riding: "hard",
      symptoms: ["metal-in-oil", "impeller-wobble"],
      mods: { engine: true, charger: true, boostPsi: 20, changedSinceSlip: null },
      notLooked: true,
    }),
    serial: "SN 0042",
    goAheadMinor: 65_050,
  });
  const page = await staff.get(`/shop/jobs/${number}`);
  expect(page.status).toBe(200);
  const words = wordsOf(page);
  for (const part of [
    "Verdict Stop riding",
    "There is metal in the oil. A part has started to break up. Source: common practice, no published source.",
    "Drive gear has lost teeth or shattered Source: common practice, no published source. Metal glitter in the oil Yes: engine out, apart and cleaned",
    "Ball bearing is failing",
    "Likely. The engine must not run.",
    "Final slip 18 lbf·ft (24.4 N·m)",
    "May end between 17.5 and 18.1 lbf·ft",
    "Before the lock nut 16.5 lbf·ft",
    "NOTICE Never tighten the set nut home.",
    "Modified charger with high boost: the ceiling of the unit",
    "Needle bearing set for the gear Source: default of this project. Laid out 1 · Used 0",
    "Changed since slip set Not sure",
    "Peak boost 20 psi",
    "Wren Calloway",
    "7 Heron Quay Ottersby 00001 US",
    "SN 0042",
    "Owner was told from $555.00",
    "Go ahead up to $650.50",
    "Version 1",
  ]) {
    expect(words).toContain(part);
  }
  expect(words.indexOf("There is metal in the oil")).toBeLessThan(
    words.indexOf("The craft was changed after the slip was set"),
  );
  expect(page.text).toContain('href="tel:+12025550143"');
  expect(words.indexOf("Wren Calloway")).toBeLessThan(words.indexOf("Why this verdict"));
});

it("shows a job with no target, no suspects and an owner who collects", async () => {
  const { number } = await aJob({
    answers: someAnswers({ mods: { engine: false, charger: true, boostPsi: null, changedSinceSlip: false } }),
    returnTo: { collect: true },
  });
  const words = wordsOf(await staff.get(`/shop/jobs/${number}`));
  expect(words).toContain("No target yet: see the notices below");
  expect(words).toContain("nothing points to a failed part");
  expect(words).toContain("The owner collects it");
  expect(words).toContain("Not said: ask before any work over the price");
});

it("shows a name as text, whatever is in it", async () => {
  const name = `<script>alert("x")</script> & "Co"`;
  const { number } = await aJob({ contact: { name, email: "co@shore.example" } });
  for (const path of ["/shop", `/shop/jobs/${number}`]) {
    const page = await staff.get(path);
    expect(page.text).not.toContain("<script");
    expect(wordsOf(page)).toContain(name);
  }
});

it("has no such page for a number that no job has", async () => {
  for (const number of ["16JD", "16JZ", "%3Cscript%3E"]) {
    const page = await staff.get(`/shop/jobs/${number}`);
    expect(page.status).toBe(404);
    expect(page.text).not.toContain("<script>");
  }
});

it("makes the owner a new link, shown once, and ends the old one", async () => {
  const { number, token } = await aJob();
  expect(await tagOf(token)).toBe(200);
  const asks = await staff.get(`/shop/jobs/${number}/link`);
  expect(await tagOf(token)).toBe(200);
  const made = await staff.post(`/shop/jobs/${number}/link`, { generation: fieldValue(asks, "generation") });
  expect(made.status).toBe(200);
  const [, link = ""] = />http:\/\/shop\.example\/tag\/([\w-]{22})</.exec(made.text) ?? [];
  expect(await tagOf(token)).toBe(404);
  expect(await tagOf(link)).toBe(200);
  expect(wordsOf(await staff.get(`/shop/jobs/${number}`))).toContain("Shop, Manager New link made for the owner");

  setClock(MONDAY + 10 * MINUTE);
  const ended = await staff.get(made.path);
  expect(ended.status).toBe(410);
  expect(ended.text).not.toContain(link);
});

it("makes one new link for a form that is sent twice", async () => {
  const { number } = await aJob();
  const form = { generation: fieldValue(await staff.get(`/shop/jobs/${number}/link`), "generation") };
  const made = await staff.post(`/shop/jobs/${number}/link`, form);
  const again = await staff.post(`/shop/jobs/${number}/link`, form);
  expect(again.status).toBe(409);
  const [, link = ""] = /\/tag\/([\w-]{22})"/.exec(made.text) ?? [];
  expect(await tagOf(link)).toBe(200);
});

it("shows a link to nobody else: the page of one job's link opens no other's", async () => {
  const [one, other] = [await aJob(), await aJob()];
  const made = await staff.post(`/shop/jobs/${one.number}/link`, { generation: "1" });
  const page = await staff.get(made.path.replace(one.number, other.number));
  expect(page.status).toBe(410);
  expect((await new Browser().get(made.path)).status).toBe(401);
});

it("moves a job to an offered time, and says when that is gone", async () => {
  const { number } = await aJob();
  const offers = await staff.get(`/shop/jobs/${number}/move?from=2027-03-22`);
  expect(wordsOf(offers)).toContain("Mon, Mar 22, 2027");
  const [, offer = ""] = /name="offer" value="([^"]+)"/.exec(offers.text) ?? [];
  const moved = await staff.post(`/shop/jobs/${number}/move`, { offer });
  expect(moved.status).toBe(200);
  expect(wordsOf(moved)).toContain("Bench time Mon, Mar 22, 2027");
  expect(wordsOf(moved)).toContain("Shop, Manager Moved to another time");

  const late = await aJob();
  const refused = await staff.post(`/shop/jobs/${late.number}/move`, { offer });
  expect(refused.status).toBe(409);
  expect(wordsOf(refused)).toContain("That time was taken meanwhile");
  expect(refused.text).toContain('name="offer"');
  expect((await staff.post(`/shop/jobs/${late.number}/move`, {})).status).toBe(422);
});

it("asks again for a day that is none", async () => {
  const { number } = await aJob();
  const page = await staff.get(`/shop/jobs/${number}/move?from=2027-02-30`);
  expect(page.status).toBe(422);
  expect(wordsOf(page)).toContain("Write a date that exists");
});

it("cancels only after asking, and then for good", async () => {
  const { number } = await aJob();
  const asks = await staff.get(`/shop/jobs/${number}/cancel`);
  expect(wordsOf(asks)).toContain("Yes, cancel it");
  expect(wordsOf(await staff.get(`/shop/jobs/${number}`))).toContain("State: Booked");
  const cancelled = await staff.post(`/shop/jobs/${number}/cancel`);
  expect(wordsOf(cancelled)).toContain("State: Cancelled");
  expect(wordsOf(await staff.get("/shop/arrivals"))).toMatch(new RegExp(`Cancelled \\(\\d+\\).*${number}`));
  expect(wordsOf(await staff.post(`/shop/jobs/${number}/cancel`))).toContain("State: Cancelled");
  expect((await staff.get(`/shop/jobs/${number}/move`)).path).toBe(`/shop/jobs/${number}`);
});
