import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, expect, it } from "vitest";
import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import { fieldsOf, SKIP } from "#shared/job/sheet-fields.ts";
import { FIGURES } from "#shared/messages/figure-words.ts";
import { BECAUSE_WORDS, CLASH, SHEET, STANDING_WORDS } from "#shared/messages/sheet-page-words.ts";
import { entryRefusedText } from "#shared/messages/sheet-refused-words.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { FIRST_STAFF_NAME } from "#shared/shop/staff.ts";
import { ADVICE_SOURCE } from "#shared/slip/travel-words.ts";
import { aJob, someAnswers } from "#tests/bench/a-job.ts";
import { Browser, fieldValue, MONDAY, setClock, signedIn, WARM_UP, wordsOf } from "#tests/bench/the-shop.ts";
import { DULL_ENTRIES } from "#tests/job/a-sheet.ts";

let staff: Browser;

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});

const JSON_ASKED = { accept: "application/json" };

/** A rebuild of a set-nut unit for a final slip of 18, received. */
async function aReceived(
  answers = someAnswers({
    symptoms: ["whine"],
    riding: "hard",
    mods: { engine: true, charger: true, boostPsi: 20, changedSinceSlip: false },
  }),
) {
  const { number } = await aJob({ answers });
  const moved = await env.SHOP.getByName("main").moveJob({
    number,
    move: "receive",
    staff: "Sedge Hallow",
    note: null,
    ifState: "booked",
  });
  if (!moved.ok) throw new Error("Not received");
  return { number, sheet: `/shop/jobs/${number}/sheet` };
}

let made = 0;
const stamp = (after = 0) => ({ after: String(after), key: `key-of-sixteen-${made++}` });
const formOf = (step: SheetStepId) => fieldsOf(DULL_ENTRIES[step]);

it("shows every step of the unit, the first open, with what to aim for and where that comes from", async () => {
  const { sheet } = await aReceived();
  const page = await staff.get(sheet);
  expect(page.status).toBe(200);
  const words = wordsOf(page);
  for (const part of [
    SHEET.aimText(18, 17.5, 18.1),
    "Set 16.5 lbf·ft before the lock nut",
    "The lock nut adds 1.5 lbf·ft",
    "by the shop's settings",
    SHEET.starts,
    SHEET.missing(12),
    "Source: common practice, no published source.",
    "NOTICE On a set-nut unit the set nut stops part-way.",
    ADVICE_SOURCE,
  ]) {
    expect(words).toContain(part);
  }
  expect(
    [...page.text.matchAll(/<details class="step"[^>]*data-step="([\w-]+)"[^>]* open/g)].map(([, id]) => id),
  ).toEqual(["as-found-slip"]);
  expect(page.text).not.toContain('data-step="shims"');
});

it("walks through the sheet by plain forms until it is complete", async () => {
  const { sheet } = await aReceived();
  let page = await staff.get(sheet);
  const steps = [...page.text.matchAll(/data-step="([\w-]+)"/g)].map(([, id]) => id as SheetStepId);
  for (const step of steps) {
    const [, key = ""] = new RegExp(`sheet/${step}".*?name="key" value="([\\w-]+)"`, "s").exec(page.text) ?? [];
    page = await staff.post(`${sheet}/${step}`, { ...formOf(step), after: "0", key, do: "keep" });
    expect(page.status).toBe(200);
    expect(wordsOf(page)).toContain(SHEET.saved(STEP_WORDS[step].title));
  }
  const words = wordsOf(page);
  expect(words).toContain(SHEET.complete);
  expect(words).toContain("Mean 17.82 lbf·ft of 17.8, 17.85, 17.8; digital wrench");
  expect(words).toContain(SHEET.decision.accept);
  expect(words).toMatch(/Mean 17\.82 ± 0\.\d\d lbf·ft/);
});

it("names each field that is not accepted with what is, keeps what was typed, and writes nothing", async () => {
  const { sheet } = await aReceived();
  const form = { ...formOf("as-found-slip"), readings: ["15.2", "1x"], "tool.accuracyPercent": "40", ...stamp() };
  const page = await staff.post(`${sheet}/as-found-slip`, form);
  expect(page.status).toBe(422);
  const words = wordsOf(page);
  expect(words).toContain(`${SHEET.readings} : a number over 0, up to 200`);
  expect(words).toContain(`${SHEET.toolAccuracy} : a number from 0.001 to 20`);
  expect(page.text).toContain('value="1x"');
  expect(page.text).toContain('href="#as-found-slip.readings.1"');
  const asProgram = await staff.post(`${sheet}/as-found-slip`, form, JSON_ASKED);
  expect(JSON.parse(asProgram.text)).toMatchObject({
    status: 422,
    reason: "not-accepted",
    errors: [
      { field: "readings.1", accepted: "a number over 0, up to 200" },
      { field: "tool.accuracyPercent", accepted: "a number from 0.001 to 20" },
    ],
  });
  expect(wordsOf(await staff.get(sheet))).toContain(SHEET.missing(12));
});

it("refuses a stamp that no form of ours has, and a step that is none", async () => {
  const { sheet } = await aReceived();
  const answer = await staff.post(`${sheet}/screws`, { note: "", after: "-1", key: "short" }, JSON_ASKED);
  expect(JSON.parse(answer.text).errors).toEqual([
    { field: "after", accepted: "a whole number from 0 to 100000" },
    { field: "key", accepted: "16 to 64 letters, digits, _ or -" },
  ]);
  expect((await staff.post(`${sheet}/no-such-step`, stamp())).status).toBe(404);
  expect((await staff.post(`${sheet}/shims`, { ...formOf("shims"), ...stamp() })).status).toBe(409);
});

it("skips a step with a reason only, and shows it", async () => {
  const { sheet } = await aReceived();
  const skip = { [SKIP.button]: SKIP.value, ...stamp() };
  const refused = await staff.post(`${sheet}/impeller`, { ...skip, [SKIP.why]: " " });
  expect(refused.status).toBe(422);
  expect(wordsOf(refused)).toContain(`${SHEET.skipWhy} : text of 1 to 500 characters`);
  const page = await staff.post(`${sheet}/impeller`, { ...skip, [SKIP.why]: "Stays on its shaft" });
  expect(wordsOf(page)).toContain("Skipped: Stays on its shaft");
});

it("two tablets: both entries side by side, mine written after theirs, nothing lost", async () => {
  const { sheet } = await aReceived();
  await staff.post(`${sheet}/screws`, { note: "Theirs, in pattern", ...stamp() });
  const clash = await staff.post(`${sheet}/screws`, { note: "Mine, by hand", ...stamp() });
  expect(clash.status).toBe(409);
  const words = wordsOf(clash);
  for (const part of [CLASH.says, "Theirs, in pattern", "Mine, by hand", CLASH.keepMine, CLASH.keepTheirs]) {
    expect(words).toContain(part);
  }
  const kept = await staff.post(`${sheet}/screws`, {
    note: fieldValue(clash, "note"),
    after: fieldValue(clash, "after"),
    key: fieldValue(clash, "key"),
  });
  expect(wordsOf(kept)).toContain("Done (Mine, by hand)");
  const asProgram = await staff.post(`${sheet}/screws`, { note: "", ...stamp(1) }, JSON_ASKED);
  expect(JSON.parse(asProgram.text)).toMatchObject({
    reason: "written-meanwhile",
    newer: { version: 2, entry: { note: "Mine, by hand" } },
  });
});

it("what somebody else wrote on a shared device is refused in plain words, and taken over under the present name", async () => {
  const { sheet } = await aReceived();
  expect((await staff.get(sheet)).text).toContain(`data-staff="${FIRST_STAFF_NAME}"`);
  const form = { note: "By hand", ...stamp() };
  const refused = await staff.post(`${sheet}/screws`, { ...form, by: "Tansy Marl" }, JSON_ASKED);
  expect(JSON.parse(refused.text)).toMatchObject({
    status: 409,
    reason: "other-writer",
    signedIn: FIRST_STAFF_NAME,
    detail: "Written by Tansy Marl. Sign in as Tansy Marl to send it, or take it over as yours.",
  });
  expect(wordsOf(await staff.get(sheet))).not.toContain("By hand");
  const mine = await staff.post(`${sheet}/screws`, { ...form, by: FIRST_STAFF_NAME }, JSON_ASKED);
  expect(JSON.parse(mine.text)).toMatchObject({ stored: { version: 1, by: FIRST_STAFF_NAME } });
});

it("shows what was written over, newest first, with who and when; nothing where a step was written once", async () => {
  const { number, sheet } = await aReceived();
  await staff.post(`${sheet}/screws`, { note: "First", ...stamp() });
  expect(wordsOf(await staff.get(sheet))).not.toContain("Earlier entries");
  const ledger = env.SHOP.getByName("main");
  const second = { entry: { kind: "done", note: "Second" }, after: 1, key: stamp().key, staff: "Tansy Marl" } as const;
  expect(await ledger.keepEntry({ number, step: "screws", by: null, ...second })).toMatchObject({ ok: true });
  await staff.post(`${sheet}/screws`, { note: "Third", ...stamp(2) });
  const page = await staff.get(sheet);
  const [, earlier = ""] = /<details class="earlier">(.*?)<\/details>/s.exec(page.text) ?? [];
  const when = "Mon, Mar 1, 2027, 10:00 AM EST";
  expect(wordsOf({ ...page, text: earlier }).trim()).toBe(
    `${SHEET.earlier(2)} Tansy Marl, ${when} Done (Second) ${FIRST_STAFF_NAME}, ${when} Done (First)`,
  );
  expect(page.text.split('class="earlier"')).toHaveLength(2);
});

it("a form sent twice writes once", async () => {
  const { sheet } = await aReceived();
  const form = { note: "Once", ...stamp() };
  const [one, other] = [
    await staff.post(`${sheet}/screws`, form, JSON_ASKED),
    await staff.post(`${sheet}/screws`, form, JSON_ASKED),
  ];
  expect(one.text).toBe(other.text);
  expect(JSON.parse(one.text)).toMatchObject({ stored: { version: 1 } });
});

it("says in plain words why it is not written where the job is not on the bench", async () => {
  const { number } = await aJob();
  const sheet = `/shop/jobs/${number}/sheet`;
  expect(wordsOf(await staff.get(sheet))).toContain(SHEET.notOnBench("booked"));
  const page = await staff.post(`${sheet}/as-found-slip`, { ...formOf("as-found-slip"), ...stamp() });
  expect(page.status).toBe(409);
  expect(wordsOf(page)).toContain(entryRefusedText({ reason: "not-on-bench", state: "booked" }));
});

it("asks again for what is still wanted at a step", async () => {
  const { sheet } = await aReceived();
  await staff.post(`${sheet}/needles-out`, { ...formOf("needles-out"), ...stamp() });
  const page = await staff.post(`${sheet}/needles-in`, { needles: "39", why: "", ...stamp() });
  const words = wordsOf(page);
  expect(words).toContain(BECAUSE_WORDS["needles-differ"]);
  expect(words).toContain(STANDING_WORDS["needs-why"]);
  expect(words).toContain(SHEET.needlesDue(40));
});

it("what the bench finds on opening changes the steps and the slip to set", async () => {
  const { sheet } = await aReceived(
    someAnswers({
      unitFamily: "unknown",
      symptoms: ["whine"],
      mods: { engine: false, charger: true, boostPsi: null, changedSinceSlip: false },
    }),
  );
  expect(wordsOf(await staff.get(sheet))).toContain(SHEET.noAim);
  const inspect = { ...formOf("inspect"), unitFamily: "shim-stack", boostPsi: "15", ...stamp() };
  const page = await staff.post(`${sheet}/inspect`, inspect);
  expect(wordsOf(page)).toContain(SHEET.aimText(15, 14.5, 15.1));
  expect(page.text).not.toContain('data-step="plate-recess"');
});

it("advises on the next angle from two tries, with an interval, and never past the limit", async () => {
  const { sheet } = await aReceived();
  const tries = { "tries.nutDegrees": ["180", "270"], "tries.slip": ["8.6", "12.4"], "tries.reached": ["", ""] };
  const page = await staff.post(`${sheet}/slip-before-lock`, { ...formOf("slip-before-lock"), ...tries, ...stamp() });
  expect(wordsOf(page)).toMatch(/The target is expected at 3\d\d°, between 3\d\d° and [34]\d\d°;.*Never past 40\d°/);
});

it("works out the heat for an impeller and the impeller's load, as planning figures with their limits", async () => {
  const { sheet } = await aReceived();
  const heat = "heat.alloy=2618-T61&heat.shaftMm=30&heat.interferenceMm=0.03&heat.clearanceMm=0,03&heat.roomC=20";
  const hot = wordsOf(await staff.get(`${sheet}?step=impeller&${heat}&heat.soakHours=0.5`));
  // 0.06 mm over 30 mm at 22.3e-6 1/K is 89.7 K.
  expect(hot).toContain("Heat the impeller alone to 110 °C, 90 over the workshop.");
  expect(hot).toContain("Never over 150 °C (default of this project).");
  expect(wordsOf(await staff.get(`${sheet}?step=impeller&${heat}&heat.soakHours=900`))).toContain(FIGURES.fillIn);
  const load = "load.boostPsi=20&load.massFlowKgPerS=0.25&load.efficiency=0.7&load.shaftRpm=50000&load.inletC=15";
  const loaded = wordsOf(await staff.get(`${sheet}?${load}`));
  expect(loaded).toContain("Planning figure, not a bench value.");
  expect(loaded).toMatch(/The impeller asks for about \d\.\d lbf·ft/);
});

it("what is typed is shown as text, whatever is in it", async () => {
  const { sheet } = await aReceived();
  const note = `<script>alert("x")</script> & "Co"`;
  const page = await staff.post(`${sheet}/screws`, { note, ...stamp() });
  expect(page.text).not.toContain("<script>alert");
  expect(wordsOf(page)).toContain(`Done (${note})`);
});

it("a stranger gets nothing of a sheet", async () => {
  const { sheet } = await aReceived();
  const stranger = new Browser();
  expect((await stranger.get(sheet)).status).toBe(401);
  expect((await stranger.post(`${sheet}/screws`, { note: "", ...stamp() })).status).toBe(401);
});
