import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { chainHash } from "#shared/job/record-chain.ts";
import { aJob, someAnswers } from "#tests/bench/a-job.ts";
import { aBrowser, aManager, askPlain, atWork } from "#tests/bench/staff-at-work.ts";
import {
  type Browser,
  fieldValue,
  fresh,
  MONDAY,
  type Page,
  setClock,
  WARM_UP,
  wordsOf,
} from "#tests/bench/the-shop.ts";
import { type Entries, GENTLE_SLIPS, takeTo, writeSheet } from "#tests/ledger/a-served-job.ts";

beforeAll(...WARM_UP);
beforeEach(() => void setClock(MONDAY));

const shop = () => env.SHOP.getByName("main");

async function aShippedJob({ serial = `SN-${fresh()}-77`, hours = 50, entries = {} as Entries } = {}) {
  const job = await aJob({ serial, answers: someAnswers({ engineHours: hours }) });
  await writeSheet(shop(), job.number, entries);
  await takeTo(shop(), job.number, ["receive", "start", "finish", "ship"]);
  return job;
}

const CODE = /[0-9A-Z]{4,5}(?:-[0-9A-HJKMNP-TV-Z]{4}){4}-[0-9A-HJKMNP-TV-Z]/;
const codeOn = (page: Page): string => {
  const code = CODE.exec(wordsOf(page))?.[0];
  if (code === undefined) throw new Error(`No code on ${page.text}`);
  return code;
};
const ownersPage = ({ token }: { readonly token: string }) => aBrowser().get(`/tag/${token}/record`);
const correctionOf = (page: Page, change: Readonly<Record<string, string>>) => ({
  ...Object.fromEntries(
    ["ifHash", "engineHours", "serial", "found", "left", "note"].map((name) => [name, fieldValue(page, name)]),
  ),
  why: "Typed wrong",
  ...change,
});

async function correct(browser: Browser, number: string, change: Readonly<Record<string, string>>): Promise<Page> {
  const page = await browser.get(`/shop/jobs/${number}/record`);
  return browser.post(`/shop/jobs/${number}/record/correct`, correctionOf(page, change));
}

describe("the owner's record", () => {
  it("says in plain words what was found, done and left, and when it is due again", async () => {
    const job = await aShippedJob();
    const page = await ownersPage(job);
    expect(page.status).toBe(200);
    expect(page.headers.get("cache-control")).toBe("no-store");
    const words = wordsOf(page);
    expect(words).toContain(
      "The slip was 10.85 lbf·ft (14.7 N·m) as it came in: between 10.7 and 11.0 with 95 % confidence.",
    );
    expect(words).toContain("We measured the slip and set it.");
    expect(words).toContain("We left it at 12.52 lbf·ft (17.0 N·m): between 12.3 and 12.7 with 95 % confidence.");
    expect(words).toContain("It lies between 12 and 13 lbf·ft with a chance of over 99 %: accepted.");
    expect(words).toContain("Have the slip checked at 150 engine hours.");
    expect(words).toContain("JCGM 100:2008");
    expect(words).toContain("Sedge Hallow, Wilma Bench");
    expect(words).not.toContain("Wren Calloway");
  });

  it("says why a step was left out", async () => {
    const entries = { "as-found-slip": { kind: "skipped", why: "Gear was already off" } } as Entries;
    const words = wordsOf(await ownersPage(await aShippedJob({ entries })));
    expect(words).toContain("The slip was not measured as it came in: Gear was already off");
    expect(words).toMatch(/Steps left out Slip as found: Gear was already off/);
  });

  it("writes what the bench typed as text, never as markup", async () => {
    const entries = { "turn-by-hand": { kind: "done", note: "<script>alert(1)</script>" } } as Entries;
    const page = await ownersPage(await aShippedJob({ entries }));
    expect(page.text).not.toContain("<script>alert");
    expect(wordsOf(page)).toContain("<script>alert(1)</script>");
  });

  it("is opened by the job's own link alone, and leads from the tag once it is there", async () => {
    const [job, other] = [await aShippedJob(), await aJob()];
    expect((await aBrowser().get(`/tag/${job.token.slice(0, -1)}0/record`)).status).toBe(404);
    expect((await aBrowser().get(`/tag/${job.number}/record`)).status).toBe(404);
    const none = await ownersPage(other);
    expect(wordsOf(none)).toContain("There is no service record yet");
    expect(none.text).not.toContain(job.number);
    expect((await aBrowser().get(`/tag/${job.token}`)).text).toContain(`/tag/${job.token}/record`);
    expect((await aBrowser().get(`/tag/${other.token}`)).text).not.toContain("/record");
  });

  it("shows the earlier services of the unit over its hours, as a drawing and as a table", async () => {
    const serial = `SN-${fresh()}-88`;
    const first = await aShippedJob({ serial });
    setClock(MONDAY + 86_400_000);
    const entries = { "as-found-slip": { ...GENTLE_SLIPS["as-found-slip"], readings: [11.5, 11.55, 11.5] } } as Entries;
    const page = await ownersPage(await aShippedJob({ serial, hours: 120, entries }));
    const words = wordsOf(page);
    expect(words).toMatch(/Mar 1, 2027 50 10\.85 ± [\d.]+ 12\.52 ± [\d.]+ Slip check/);
    expect(words).toMatch(/Mar 2, 2027 120 11\.52 ± [\d.]+ 12\.52 ± [\d.]+ Slip check/);
    expect(words).toContain("The slip falls by about 0.14 lbf·ft in 10 engine hours");
    expect(page.text.match(/<circle class="found"/g)).toHaveLength(2);
    expect(page.text.match(/<circle class="left"/g)).toHaveLength(2);
    expect(page.text).toContain(`/check/${codeOn(await ownersPage(first))}`);
  });
});

describe("the check page", () => {
  it("vouches for a code, however it was typed, and shows little", async () => {
    const job = await aShippedJob({ serial: "SN-90417" });
    const code = codeOn(await ownersPage(job));
    const typed = code.toLowerCase().replaceAll("-", " ");
    const page = await aBrowser().get(`/check?code=${encodeURIComponent(typed)}`);
    expect(page.status).toBe(200);
    const words = wordsOf(page);
    expect(words).toContain("Genuine and unchanged");
    expect(words).toContain("Mon, Mar 1, 2027");
    expect(words).toContain("Set nut");
    expect(words).toContain("0417");
    expect(words).toContain("12.52 lbf·ft");
    for (const more of ["SN90417", "Sedge", "Wilma", "Wren", "50"]) expect(words).not.toContain(more);
  });

  it("tells a slip of the pen from a code that is not known", async () => {
    const code = codeOn(await ownersPage(await aShippedJob()));
    const wrong = code.slice(0, -1) + (code.endsWith("0") ? "1" : "0");
    const [pen, short, empty] = await Promise.all(
      [`/check/${wrong}`, "/check/16JD", "/check?code="].map((path) => aBrowser().get(path)),
    );
    expect([pen?.status, short?.status, empty?.status]).toEqual([422, 422, 422]);
    expect(wordsOf(pen!)).toContain("One sign is wrong");
    expect(fieldValue(pen!, "code")).toBe(wrong);
    expect(wordsOf(short!)).toContain("not a whole code");
    expect(wordsOf(await aBrowser().get("/check/16JD-Q9W1-DFWF-077Y-MGA1-J"))).toContain("Not known");
  });

  it("leads from a corrected record to the one that counts, and says what was taken back", async () => {
    const job = await aShippedJob();
    const before = codeOn(await ownersPage(job));
    await correct(await aManager(), job.number, { left: "12.6 12.6 12.65" });
    const after = codeOn(await ownersPage(job));
    const page = await aBrowser().get(`/check/${before}`);
    expect(wordsOf(page)).toContain("Genuine, but corrected since");
    expect(page.text).toContain(`/check/${after}`);
    await shop().undoMove({ number: job.number, staff: "Wilma Bench", note: "Wrong box", ifState: "shipped" });
    expect(wordsOf(await aBrowser().get(`/check/${after}`))).toContain("Taken back");
    expect(wordsOf(await ownersPage(job))).toContain("The service record was taken back");
  });
});

describe("the shop's record", () => {
  it("is corrected by a manager, with the reason for all to read", async () => {
    const job = await aShippedJob();
    const manager = await aManager();
    const page = await correct(manager, job.number, {
      left: "12,6  12.6\t12.65",
      engineHours: "52.5",
      serial: "sn 5150",
      note: "Lock nut was new.",
      "part.lock-nut": "1",
      why: "Second reading typed wrong",
    });
    const words = wordsOf(page);
    expect(words).toContain("The correction is sealed.");
    expect(words).toContain("Why: Second reading typed wrong");
    for (const said of ["12.6, 12.6, 12.65", "52.5 h", "SN5150", "Lock nut was new.", "Lock nut × 1"]) {
      expect(words).toContain(said);
    }
    expect(words).toContain("Have the slip checked at 152.5 engine hours.");
    expect(wordsOf(await ownersPage(job))).toContain("Why: Second reading typed wrong");
  });

  it("names every field that is wrong, and keeps what was typed", async () => {
    const job = await aShippedJob();
    const change = { left: "12.5 twelve", found: "", engineHours: "-3", "part.lock-nut": "some", why: " " };
    const page = await correct(await aManager(), job.number, change);
    expect(page.status).toBe(422);
    expect(wordsOf(page)).toContain("5 fields need another look");
    for (const [name, typed] of Object.entries(change)) expect(fieldValue(page, name)).toBe(typed);
    expect(wordsOf(page)).toContain("a slip that was read is not unread later");
    expect((await shop().record(job.number))?.entries).toHaveLength(1);
  });

  it("is not corrected from a page that is out of date", async () => {
    const job = await aShippedJob();
    const manager = await aManager();
    const old = await manager.get(`/shop/jobs/${job.number}/record`);
    await correct(manager, job.number, { note: "First" });
    const late = await manager.post(`/shop/jobs/${job.number}/record/correct`, correctionOf(old, { note: "Second" }));
    expect(late.status).toBe(409);
    expect(wordsOf(late)).toContain("The record was changed meanwhile");
    expect((await shop().record(job.number))?.entries).toHaveLength(2);
  });

  it("is read by the bench, and corrected and exported by managers alone", async () => {
    const job = await aShippedJob();
    const { browser, manager } = await atWork("bench");
    const page = await browser.get(`/shop/jobs/${job.number}/record`);
    expect(wordsOf(page)).toContain("Only a manager can correct a record.");
    expect(page.text).not.toContain("record/correct");
    const form = correctionOf(await manager.get(`/shop/jobs/${job.number}/record`), { note: "Not mine" });
    expect((await browser.post(`/shop/jobs/${job.number}/record/correct`, form)).status).toBe(403);
    for (const path of ["/shop/records", "/shop/records.jsonl"]) {
      expect((await browser.get(path)).status).toBe(403);
      expect((await manager.get(path)).status).toBe(200);
      expect((await aBrowser().get(path)).status).toBe(401);
    }
    expect((await browser.get("/shop/rise")).status).toBe(200);
    for (const path of [`/shop/jobs/${job.number}/record`, "/shop/rise"]) {
      expect((await askPlain(path)).status).toBe(401);
    }
    expect((await shop().record(job.number))?.entries).toHaveLength(1);
    expect((await browser.get(`/shop/jobs/${job.number}`)).text).toContain(`/shop/jobs/${job.number}/record`);
  });
});

it("exports the chain as lines whose hashes fit, and says that they do", async () => {
  await aShippedJob();
  const manager = await aManager();
  const file = await manager.get("/shop/records.jsonl");
  expect(file.headers.get("content-type")).toContain("text/plain");
  expect(file.headers.get("content-disposition")).toContain("records.jsonl");
  const lines = file.text.trimEnd().split("\n");
  let before = "0".repeat(64);
  for (const [index, line] of lines.entries()) {
    const parts = /^\{"before":"([0-9a-f]{64})","body":(.*),"hash":"([0-9a-f]{64})","step":(\d+)\}$/.exec(line);
    expect(parts?.[1]).toBe(before);
    expect(parts?.[3]).toBe(chainHash(before, parts![2]!));
    expect(parts?.[4]).toBe(String(index + 1));
    before = parts![3]!;
  }
  const page = wordsOf(await manager.get("/shop/records"));
  expect(page).toContain(`All ${lines.length} entries were worked out again`);
  expect(page).toContain(before);
});

it("shows what the lock nuts did, with what does not belong to them", async () => {
  const before = (slip: number) =>
    ({
      "slip-before-lock": {
        ...GENTLE_SLIPS["slip-before-lock"],
        tries: [{ nutDegrees: 250, shimMm: null, slip, loosened: false }],
      },
    }) as Entries;
  for (const slip of [11, 11.1, 10.9, 11, 11.05, 10.95]) await aShippedJob({ entries: before(slip) });
  const odd = await aShippedJob({ entries: before(6) });
  const words = wordsOf(await (await aManager()).get("/shop/rise"));
  expect(words).toMatch(/Rise, lbf·ft 1\.\d\d, between 1\.\d\d and 1\.\d\d/);
  expect(words).toContain(`${odd.number}: 6.52`);
});
