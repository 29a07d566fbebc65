import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { InspectEntry } from "#shared/job/sheet-entry.ts";
import { STANDING, standingWords } from "#shared/messages/job-standing-words.ts";
import { ASKING } from "#shared/messages/shop-approval-words.ts";
import { TAG_WORDS } from "#shared/messages/tag-words.ts";
import { JOB_STATES, type JobState } from "#shared/shop/job-state.ts";
import { aJob } from "#tests/bench/a-job.ts";
import { atWork } from "#tests/bench/staff-at-work.ts";
import {
  Browser,
  fieldValue,
  MINUTE,
  MONDAY,
  type Page,
  setClock,
  signedIn,
  WARM_UP,
  wordsOf,
} from "#tests/bench/the-shop.ts";
import { DULL_ENTRIES } from "#tests/job/a-sheet.ts";

let staff: Browser;

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});

const shop = () => env.SHOP.getByName("main");
const owner = new Browser();

async function onBench(change: Parameters<typeof aJob>[0] = {}) {
  const job = await aJob(change);
  for (const [move, ifState] of [
    ["receive", "booked"],
    ["start", "received"],
  ] as const) {
    await shop().moveJob({ number: job.number, move, staff: "Wilma", note: null, ifState });
  }
  return { ...job, tag: `/tag/${job.token}`, page: `/shop/jobs/${job.number}/approval` };
}

const REBUILD = "full-rebuild:42500:USD";
const asks = (page: Page, change: Record<string, string> = {}) => ({
  wish: fieldValue(page, "wish"),
  work: REBUILD,
  price: "",
  why: "The friction washers are worn through.",
  photo: "",
  until: "2027-03-05",
  how: "ask",
  ...change,
});

async function asked(change: Record<string, string> = {}) {
  const job = await onBench();
  const page = await staff.get(job.page);
  const answer = await staff.post(job.page, asks(page, change));
  expect(answer.path).toContain("done=asked");
  const approval = fieldValue(await owner.get(`${job.tag}/approval`), "approval");
  return { ...job, approval };
}

describe("the shop asks", () => {
  it("with a form that is filled in from the bench sheet", async () => {
    const { number, page } = await onBench();
    await shop().keepEntry({
      number,
      step: "as-found-slip",
      after: 0,
      entry: {
        kind: "slip",
        readings: [19, 19.1, 19.2],
        breakaway: null,
        tool: { kind: "electronic", accuracyPercent: 1, resolution: 0.1 },
        why: null,
      },
      key: `key-of-${number}`,
      staff: "Wilma",
      by: null,
    });
    const form = await staff.get(page);
    expect(form.text).toMatch(/value="stop-riding:55500:USD"[^>]*checked/);
    expect(wordsOf(form)).toContain("The slip was over 18 lbf·ft.");
    expect(form.text).toMatch(/<textarea[^>]*>The slip was over 18/);
    expect(fieldValue(form, "until")).toBe("2027-03-06");
    expect(wordsOf(await staff.get(`/shop/jobs/${number}`))).toContain(ASKING.open);
  });

  it("says what is wrong in each field and keeps what was typed", async () => {
    const { page, number } = await onBench();
    const form = await staff.get(page);
    const sent = asks(form, { work: "", price: "12,5,0", why: " ", until: "soon" });
    const answer = await staff.post(page, { ...sent, why: "  " });
    expect(answer.status).toBe(422);
    for (const said of ["3 things to mend", "Pick the work.", "Say why", "A day from today on"]) {
      expect(wordsOf(answer)).toContain(said);
    }
    expect(fieldValue(answer, "wish")).toBe(sent.wish);
    const price = await staff.post(page, { ...asks(form), price: "12,5,0" });
    expect([price.status, fieldValue(price, "price")]).toEqual([422, "12,5,0"]);
    const past = await staff.post(page, { ...asks(form), until: "2027-02-28", why: "Kept <b>words</b>" });
    expect([past.status, wordsOf(past)]).toEqual([422, expect.stringContaining("Kept <b>words</b>")]);
    expect((await shop().job(number))?.state).toBe("on-bench");
  });

  it("at the price that stood on the page, or at none", async () => {
    const { page, number } = await onBench();
    const form = await staff.get(page);
    const { version, settings } = await shop().settings();
    const dearer = { ...settings.prices.byJob, "full-rebuild": { "shim-stack": 1, "set-nut": 50_000, unknown: 1 } };
    const prices = { ...settings.prices, byJob: dearer };
    await shop().saveSettings({ ifVersion: version, settings: { ...settings, prices }, staff: "M" });
    await staff.post(page, asks(form));
    // A manager's page said 425.00, so that is what is asked.
    expect((await shop().askStart(number))?.approvals[0]?.offered.quote.minor).toBe(42_500);
    await shop().saveSettings({ ifVersion: version + 1, settings, staff: "M" });
  });

  it("at the shop's own price, where somebody is no manager", async () => {
    const { page, number } = await onBench();
    const { browser } = await atWork("bench");
    const form = await browser.get(page);
    expect([form.status, form.text.includes('name="price"')]).toEqual([200, false]);
    const cheaper = await browser.post(page, asks(form, { price: "399" }));
    expect([cheaper.status, wordsOf(cheaper)]).toEqual([409, expect.stringContaining("prices have changed")]);
    const forged = await browser.post(page, asks(form, { work: "full-rebuild:100:USD" }));
    expect([forged.status, (await shop().job(number))?.state]).toEqual([409, "on-bench"]);
    expect((await browser.post(page, asks(form))).path).toContain("done=asked");
  });

  it("once, however often the button is tapped", async () => {
    const { page, number } = await onBench();
    const form = asks(await staff.get(page));
    const twice = await Promise.all([staff.post(page, form), staff.post(page, form)]);
    expect(twice.map(({ status }) => status)).toEqual([200, 200]);
    expect((await shop().askStart(number))?.approvals).toHaveLength(1);
  });

  it("or goes ahead within what the owner said, and the history tells", async () => {
    const job = await onBench({ goAheadMinor: 45_000 });
    const form = await staff.get(job.page);
    expect(wordsOf(form)).toContain("go ahead without asking up to $450.00");
    const over = await staff.post(job.page, asks(form, { how: "go-ahead", price: "450.01" }));
    expect([over.status, wordsOf(over)]).toEqual([409, expect.stringContaining("over what the owner said")]);
    await staff.post(job.page, asks(form, { how: "go-ahead" }));
    expect(wordsOf(await staff.get(`/shop/jobs/${job.number}`))).toContain(
      "within the owner's “go ahead up to $450.00”",
    );
    expect(wordsOf(await owner.get(job.tag))).toContain("Full rebuild and slip setting");
    expect(wordsOf(await owner.get(`${job.tag}/approval`))).toContain("This is within it, so it was done at once.");
  });

  it("only while the unit is on the bench", async () => {
    const { number } = await aJob();
    const page = await staff.get(`/shop/jobs/${number}/approval`);
    expect(wordsOf(page)).toContain(ASKING.notNow);
    expect(page.text).not.toContain('name="wish"');
    const sent = await staff.post(`/shop/jobs/${number}/approval`, {
      ...{ wish: "w", work: REBUILD, price: "", why: "?", photo: "", until: "2027-03-05", how: "ask" },
    });
    expect([sent.status, wordsOf(sent)]).toEqual([409, expect.stringContaining("not on the bench now: booked")]);
  });
});

describe("the owner", () => {
  it("sees what, why, how much and until when, and reading it changes nothing", async () => {
    const { tag, number } = await asked();
    const before = await shop().job(number);
    for (const path of [tag, `${tag}/approval`, `${tag}/approval?done=approved`, `${tag}/approval?answer=approve`]) {
      expect((await owner.get(path)).status).toBe(200);
    }
    expect(await shop().job(number)).toEqual(before);
    expect(wordsOf(await owner.get(tag))).toContain("The shop needs your answer");
    const words = wordsOf(await owner.get(`${tag}/approval`));
    for (const said of [
      "Full rebuild and slip setting",
      "$425.00",
      "Instead of what was agreed Slip check and setting, $125.00",
      "Fri, Mar 5, 2027, 11:59 PM EST",
      "The friction washers are worn through.",
      "The unit is not open yet. What your answers said still stands.",
      "You need do nothing to the engine: nothing points to parts in it.",
      "While the charger is off, never start the engine.",
      "Yes, do it for $425.00",
    ]) {
      expect(words).toContain(said);
    }
    expect(words).not.toContain("Drain and bag the unit before you post it");
  });

  it("says yes, and the tag shows the new work and price", async () => {
    const { tag, approval, number } = await asked({ price: "399" });
    const page = await owner.post(`${tag}/approval`, { approval, answer: "approve" });
    expect([page.status, wordsOf(page)]).toEqual([200, expect.stringContaining("Your yes is kept.")]);
    const words = wordsOf(await owner.get(tag));
    expect(words).toContain("Full rebuild and slip setting");
    expect(words).toContain("$399.00");
    expect(words).toContain("On the bench");
    expect(wordsOf(await staff.get(`/shop/jobs/${number}`))).toContain("Approved since $399.00");
    // A second tab, still open: the same answer is the same, another one is told in plain words and kept.
    expect((await owner.post(`${tag}/approval`, { approval, answer: "approve" })).status).toBe(200);
    const other = await owner.post(`${tag}/approval`, { approval, answer: "decline" });
    expect([other.status, wordsOf(other)]).toEqual([409, expect.stringContaining("You said yes. The bench goes on.")]);
    expect(wordsOf(await staff.get(`/shop/jobs/${number}/approval`))).toContain(
      "“No, leave it”, sent after this was closed.",
    );
  });

  it("asks, is answered, and says no", async () => {
    const { tag, approval, page, number } = await asked();
    const empty = await owner.post(`${tag}/approval`, { approval, key: "k0", text: "  " });
    expect([empty.status, wordsOf(empty)]).toEqual([422, expect.stringContaining("Please write your question first.")]);
    await owner.post(`${tag}/approval`, { approval, key: "k1", text: "Are the <washers> ceramic?" });
    const shopSees = await staff.get(page);
    expect(wordsOf(shopSees)).toContain("The owner has asked something.");
    expect(wordsOf(shopSees)).toContain("Are the <washers> ceramic?");
    const replied = await staff.post(`${page}/reply`, { approval, key: "k2", text: "No, they are metal." });
    expect(replied.path).toContain("done=replied");
    expect(wordsOf(await owner.get(`${tag}/approval`))).toContain("No, they are metal.");
    await owner.post(`${tag}/approval`, { approval, answer: "decline" });
    expect(await shop().job(number)).toMatchObject({ state: "on-bench", agreed: null });
    expect(wordsOf(await staff.get(page))).toContain("Declined by the owner");
  });

  it("comes too late: nothing changes, nothing is lost, and it says so", async () => {
    const { tag, approval, page, number } = await asked();
    setClock(Date.UTC(2027, 2, 6, 5) + MINUTE);
    const late = await owner.post(`${tag}/approval`, { approval, answer: "approve" });
    expect([late.status, wordsOf(late)]).toEqual([409, expect.stringContaining("The time to answer is over.")]);
    expect(await shop().job(number)).toMatchObject({ state: "on-bench", agreed: null });
    staff = await signedIn();
    expect(wordsOf(await staff.get(page))).toContain("No answer in time by its time");
    expect(wordsOf(await staff.get(page))).toContain("“Yes, go ahead”, sent after this was closed.");
  });

  it("is told where the shop took the question back", async () => {
    const { tag, approval, page } = await asked();
    expect((await staff.post(`${page}/withdraw`, { approval })).path).toContain("done=withdrawn");
    const answer = await owner.post(`${tag}/approval`, { approval, answer: "approve" });
    expect([answer.status, wordsOf(answer)]).toEqual([
      409,
      expect.stringContaining("The shop took this question back."),
    ]);
  });

  it("is warned of parts in the engine although the unit goes back unasked and unrepaired", async () => {
    const { number, tag } = await onBench();
    const good = DULL_ENTRIES.inspect as InspectEntry;
    const inspect = { ...good, parts: { ...good.parts, "drive-gear": { condition: "broken", note: null } } } as const;
    const key = "the-key-of-an-inspection";
    const kept = await shop().keepEntry({
      number,
      step: "inspect",
      entry: inspect,
      after: 0,
      key,
      staff: "Wilma",
      by: null,
    });
    expect(kept).toMatchObject({ ok: true });
    const back = { number, move: "return", staff: "Wilma", note: "Beyond repair", ifState: "on-bench" } as const;
    expect(await shop().moveJob(back)).toMatchObject({ ok: true });
    expect(wordsOf(await owner.get(tag))).toContain("Do not run the engine.");
  });

  it("opens nothing with another job's link", async () => {
    const { approval, tag } = await asked();
    const { token } = await aJob();
    for (const form of [
      { approval, answer: "approve" },
      { approval, text: "Hello", key: "k" },
    ]) {
      expect((await owner.post(`/tag/${token}/approval`, form)).status).toBe(404);
      expect((await owner.post("/tag/nobodys/approval", form)).status).toBe(404);
    }
    expect((await owner.get("/tag/nobodys/approval")).status).toBe(404);
    expect(wordsOf(await owner.get(`/tag/${token}/approval`))).not.toContain("friction washers");
    expect(wordsOf(await owner.get(`${tag}/approval`))).toContain("Your answer is needed");
  });
});

describe("the tag, as the job goes on", () => {
  const words = Object.fromEntries(
    JOB_STATES.map((state) => [state, standingWords({ state, returnTo: { collect: true } })?.title ?? null]),
  ) as Record<JobState, string | null>;

  it("tells how to pack before the unit is there, and where the job stands after", async () => {
    const { number, token } = await aJob();
    const see = async () => wordsOf(await owner.get(`/tag/${token}`));
    expect(await see()).toContain(TAG_WORDS.packTitle);
    expect(await see()).not.toContain(STANDING.title);
    for (const [move, ifState, says] of [
      ["receive", "booked", "Your unit is at the shop and waits for its bench time."],
      ["start", "received", "Somebody works on your unit."],
      ["await-part", "on-bench", "The bench goes on as soon as the part is there."],
      ["part-came", "part-to-come", "Somebody works on your unit."],
      ["return", "on-bench", "Your unit has left the shop as it came."],
      ["close", "returned-unrepaired", "The job is over."],
    ] as const) {
      await shop().moveJob({ number, move, staff: "Wilma", note: "Because", ifState });
      expect(await see()).toContain(says);
      expect(await see()).not.toContain(TAG_WORDS.packTitle);
      expect(await see()).not.toContain(TAG_WORDS.sendTo);
    }
  });

  it("has words for every state that an arrived unit can be in", () => {
    const none = JOB_STATES.filter((state) => words[state] === null);
    expect(none).toEqual(["booked", "cancelled"]);
  });
});
