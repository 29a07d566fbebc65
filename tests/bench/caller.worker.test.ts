import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, expect, it } from "vitest";
import {
  Browser,
  fieldValue,
  fresh,
  MINUTE,
  MONDAY,
  type Page,
  setClock,
  signedIn,
  WARM_UP,
  wordsOf,
} from "#tests/bench/the-shop.ts";

let staff: Browser;

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});

type Form = Readonly<Record<string, string | readonly string[]>>;

/** A set-nut unit rebuilt 30 hours ago, ridden gently, with a new whine. */
const someAnswers = (change: Form = {}): Form => ({
  "symptoms.choice": ["whine"],
  "unitFamily.choice": "set-nut",
  "builtYear.value": "2026",
  "engineHours.value": "50",
  "riding.choice": "easy",
  "engineModified.choice": "no",
  "chargerModified.choice": "no",
  "changedSinceSlip.choice": "no",
  "boost.unit": "psi",
  "lastRebuild.when": "known",
  "lastRebuild.hours": "20",
  "lastSlipSet.when": "never",
  "washers.choice": "metal",
  ...change,
});

/** What the form sends where only the symptoms were ticked. */
const nothingKnown: Form = {
  "symptoms.nothing": "yes",
  "unitFamily.choice": "unknown",
  "riding.choice": "unknown",
  "engineModified.choice": "unknown",
  "chargerModified.choice": "unknown",
  "changedSinceSlip.choice": "unknown",
  "lastRebuild.when": "unknown",
  "lastSlipSet.when": "unknown",
  "washers.choice": "unknown",
};

const someCaller = (change: Form = {}): Form => ({
  name: "Tansy Marl",
  phone: "(202) 555-0156",
  line1: "3 Boathouse Row",
  region: "Ottersby",
  postcode: "00001",
  country: "us",
  goAhead: "80,50",
  ...change,
});

const offersOn = ({ text }: Page) => [...text.matchAll(/name="offer" value="([^"]+)"/g)].map(([, offer]) => offer!);
const pickFrom = (page: Page, index = 0): Form => ({ offer: offersOn(page)[index]!, wish: fieldValue(page, "wish") });
const heldForm = (page: Page): Form => ({ hold: fieldValue(page, "hold"), wish: fieldValue(page, "wish") });

async function held(answers = someAnswers(), index = 0) {
  const offers = await staff.post("/shop/book", answers);
  const contact = await staff.post(`${offers.path}/hold`, pickFrom(offers, index));
  return { call: offers.path, contact };
}

it("goes from a call to a booked job, with a link and a tag to hand over", async () => {
  expect((await staff.get("/shop/book")).status).toBe(200);
  const offers = await staff.post("/shop/book", someAnswers());
  expect(offers.status).toBe(200);
  expect(wordsOf(offers)).toContain("It needs a full rebuild");
  expect(wordsOf(offers)).toContain("from $425.00");
  expect(wordsOf(offers)).toContain("Do not ride until it has been seen");
  expect(offersOn(offers)).toHaveLength(3);

  const contact = await staff.post(`${offers.path}/hold`, pickFrom(offers, 1));
  expect(contact.path).toBe(offers.path);
  expect(wordsOf(contact)).toMatch(/Held .* Bench \d Held until Mon, Mar 1, 2027, 10:15 AM EST/);

  const done = await staff.post(`${offers.path}/confirm`, { ...heldForm(contact), ...someCaller() });
  expect(done.status).toBe(200);
  const [, token = ""] = /\/tag\/([\w-]{22})"/.exec(done.text) ?? [];
  expect((await new Browser().get(`/tag/${token}`)).status).toBe(200);
  const [, number = ""] = /\/shop\/jobs\/(\w+)"/.exec(done.text) ?? [];
  const job = wordsOf(await staff.get(`/shop/jobs/${number}`));
  for (const part of [
    "Tansy Marl",
    "+12025550156",
    "3 Boathouse Row Ottersby 00001 US",
    "up to $80.50",
    "A new whine",
  ]) {
    expect(job).toContain(part);
  }
});

it("takes what is left empty for not sure, and says what to ask again", async () => {
  const page = await staff.post("/shop/book", nothingKnown);
  expect(page.status).toBe(200);
  expect(wordsOf(page)).toContain("It needs a full rebuild");
  expect(wordsOf(page)).toContain("when it was last rebuilt");
});

it("names each answer that cannot be read, and keeps what was typed", async () => {
  const answers = someAnswers({
    "symptoms.choice": [],
    "builtYear.value": "last year",
    "engineHours.value": "50",
    "lastRebuild.hours": "200",
    "chargerModified.choice": "yes",
    "boost.value": "900",
  });
  const page = await staff.post("/shop/book", answers);
  expect(page.status).toBe(422);
  for (const field of ["symptoms.choice", "builtYear.value", "boost.value", "lastRebuild.hours"]) {
    expect(page.text).toContain(`<a href="#${field}">`);
    expect(page.text).toMatch(new RegExp(`id="${field}"`));
  }
  expect(wordsOf(page)).toContain("4 answers need another look");
  expect(wordsOf(page)).toContain("That is more than the 50 h you gave for now");
  expect(fieldValue(page, "builtYear.value")).toBe("last year");
  expect(fieldValue(page, "boost.value")).toBe("900");
});

it("asks back once about ceramic washers where they are not plausible, then believes it", async () => {
  const asked = await staff.post("/shop/book", someAnswers({ "washers.choice": "ceramic" }));
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('name="washersAgain.choice"');
  expect((await staff.get("/shop/book")).text).not.toContain("washersAgain");
  const both = { "washers.choice": "ceramic", "washersAgain.choice": "ceramic" };
  const believed = await staff.post("/shop/book", someAnswers(both));
  expect(wordsOf(believed)).toContain("Stop riding now");
});

it("believes a date that was typed beside “not sure”", async () => {
  const offers = await staff.post(
    "/shop/book",
    someAnswers({ "symptoms.choice": [], "symptoms.nothing": "yes", "lastRebuild.when": "unknown" }),
  );
  expect(wordsOf(offers)).toContain("Not due yet");
});

it("lets the answers be changed, filled in as they were", async () => {
  const offers = await staff.post("/shop/book", someAnswers());
  const form = await staff.get(`${offers.path}/answers`);
  expect(fieldValue(form, "engineHours.value")).toBe("50");
  expect(form.text).toMatch(/value="whine"[^>]*checked/);
  expect(form.text).toMatch(/<option value="set-nut"[^>]*selected/);
  const changed = await staff.post(`${offers.path}/answers`, someAnswers({ "symptoms.choice": ["grinding"] }));
  expect(changed.path).toBe(offers.path);
  expect(wordsOf(changed)).toContain("Stop riding now");
});

it("names each wrong field of the contact, and keeps the time and what was typed", async () => {
  const { call, contact } = await held();
  const wrong = { name: " ", phone: "12", email: "tansy", line1: "", country: "Lake", goAhead: "much" };
  const page = await staff.post(`${call}/confirm`, { ...heldForm(contact), ...someCaller(wrong) });
  expect(page.status).toBe(422);
  for (const field of Object.keys(wrong)) expect(page.text).toContain(`<a href="#${field}">`);
  expect(fieldValue(page, "email")).toBe("tansy");
  expect(fieldValue(page, "hold")).toBe(heldForm(contact)["hold"]);
  const done = await staff.post(`${call}/confirm`, { ...heldForm(page), ...someCaller({ collect: "yes", line1: "" }) });
  expect(wordsOf(done)).toContain("The owner's link to job");
});

it("books once, however often the form is sent", async () => {
  const { call, contact } = await held();
  const form = { ...heldForm(contact), ...someCaller({ name: `Twice ${fresh()}` }) };
  const numberOn = ({ text }: Page) => /\/shop\/jobs\/(\w+)"/.exec(text)?.[1];
  const first = numberOn(await staff.post(`${call}/confirm`, form));
  expect(first).toBeDefined();
  expect(numberOn(await staff.post(`${call}/confirm`, form))).toBe(first);
  expect(
    (await env.SHOP.getByName("main").arrivals()).filter(({ ownerName }) => ownerName === form["name"]),
  ).toHaveLength(1);
});

it("offers other times where the held one ran out, loses nothing, and books the new pick at once", async () => {
  const { call, contact } = await held();
  setClock(MONDAY + 16 * MINUTE);
  const ended = await staff.post(`${call}/confirm`, { ...heldForm(contact), ...someCaller() });
  expect(ended.status).toBe(409);
  expect(wordsOf(ended)).toContain("held too long ago");
  expect(fieldValue(ended, "name")).toBe("Tansy Marl");
  const done = await staff.post(`${call}/confirm`, { ...pickFrom(ended), ...someCaller() });
  expect(wordsOf(done)).toContain("The owner's link to job");
});

it("says when somebody else was quicker, with fresh times", async () => {
  const offers = await staff.post("/shop/book", someAnswers());
  await held();
  const page = await staff.post(`${offers.path}/hold`, pickFrom(offers));
  expect(page.status).toBe(409);
  expect(wordsOf(page)).toContain("That time was taken meanwhile");
  expect(offersOn(page)).not.toContain(offersOn(offers)[0]);
});

it("lets another time be picked while one is held: the first is free again", async () => {
  const { call, contact } = await held();
  const others = await staff.get(`${call}?other`);
  const second = await staff.post(`${call}/hold`, pickFrom(others, 1));
  expect(second.path).toBe(call);
  expect(fieldValue(second, "hold")).not.toBe(fieldValue(contact, "hold"));
});

it("asks for more bench time where changed answers need it", async () => {
  const { call, contact } = await held();
  await staff.post(`${call}/answers`, someAnswers({ "symptoms.choice": ["grinding"] }));
  const page = await staff.post(`${call}/confirm`, { ...heldForm(contact), ...someCaller() });
  expect(page.status).toBe(409);
  expect(wordsOf(page)).toContain("more bench time than was held");
});

it("says that a call has ended where nothing is kept under its address", async () => {
  for (const path of ["/shop/book/nothing-here", "/shop/book/nothing-here/answers"]) {
    const page = await staff.get(path);
    expect(page.status).toBe(404);
    expect(wordsOf(page)).toContain("This call has ended");
  }
});

it("asks for a pick where none was made", async () => {
  const offers = await staff.post("/shop/book", someAnswers());
  const page = await staff.post(`${offers.path}/hold`, { wish: fieldValue(offers, "wish") });
  expect(page.status).toBe(422);
  expect(wordsOf(page)).toContain("Choose one of the times");
  expect(offersOn(page)).toHaveLength(3);
});

it("takes what is no form for an empty one", async () => {
  const page = await staff.post("/shop/book", {}, { "content-type": "application/json" });
  expect(page.status).toBe(422);
});
