import { afterAll, beforeAll, expect, it } from "vitest";
import { DAY, DAY_GROUP, NEXT_PAGE } from "#shared/messages/shop-day-words.ts";
import { MOVE_WORDS, MOVES, moveRefusedText } from "#shared/messages/shop-move-words.ts";
import { aJob } from "#tests/bench/a-job.ts";
import {
  type Browser,
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
beforeAll(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});
afterAll(() => setClock(MONDAY));

const DAY_MS = 24 * 60 * MINUTE;
const move = (number: string, name: string, ifState: string, more: Readonly<Record<string, string>> = {}) =>
  staff.post(`/shop/jobs/${number}/state`, { move: name, ifState, ...more });

/** A part of the day sheet, as a person reads it. */
const partOf = (page: Page, title: string): string => wordsOf(page).split(`${title} (`)[1] ?? "";

it("has something to say when there is nothing to do", async () => {
  const page = await staff.get("/shop");
  expect(wordsOf(page)).toContain(DAY.nothing);
  expect(wordsOf(page)).toContain(DAY.noBenches);
  expect(wordsOf(page)).toContain("Today, Mon, Mar 1, 2027");
});

it("shows each job under where it stands, with its one next step", async () => {
  const { number } = await aJob();
  const arriving = await staff.get("/shop");
  expect(partOf(arriving, DAY_GROUP.arriving)).toMatch(new RegExp(`^\\d+\\) ${number} .*${NEXT_PAGE.receive}`));
  expect(arriving.text).toContain(`href="/shop/receive/${number}"`);
  await staff.post(`/shop/receive/${number}`);
  expect(partOf(await staff.get("/shop"), DAY_GROUP.received)).toContain(MOVE_WORDS.start.button);
  const moved = await move(number, "start", "received", { back: "today" });
  expect(moved.path).toBe(`/shop?job=${number}&done=start`);
  expect(wordsOf(moved)).toContain(DAY.done(number, MOVE_WORDS.start.done));
  expect(partOf(moved, DAY_GROUP["on-bench"])).toContain(NEXT_PAGE.openSheet);
  await move(number, "await-part", "on-bench", { note: "Shaft, Thursday" });
  const waiting = partOf(await staff.get("/shop"), DAY_GROUP["part-to-come"]);
  expect(waiting).toContain("since Mon, Mar 1, 2027, 10:00 AM EST: Shaft, Thursday");
  expect(waiting).toContain(MOVE_WORDS["part-came"].button);
  await move(number, "set-aside", "part-to-come", { note: "Out of stock" });
  expect(partOf(await staff.get("/shop"), DAY_GROUP["set-aside"])).toContain(MOVE_WORDS["take-up"].button);
  await move(number, "return", "set-aside", { note: "Not worth it" });
  expect(partOf(await staff.get("/shop"), DAY_GROUP["to-close"])).toContain(MOVE_WORDS.close.button);
  const closed = await move(number, "close", "returned-unrepaired", { back: "today" });
  expect(wordsOf(closed)).not.toContain(`${number} Slip check`);
});

it("names what is on the benches today, and who is late", async () => {
  const { number } = await aJob();
  // Friday the 5th, a quarter of an hour after its bench time began.
  const time = /(\d+):00 AM to/.exec(wordsOf(await staff.get(`/shop/jobs/${number}`)))?.[1];
  setClock(Date.UTC(2027, 2, 5, 5 + Number(time), 15));
  staff = await signedIn();
  const page = await staff.get("/shop");
  expect(wordsOf(page).split(DAY.benches)[1]).toMatch(
    new RegExp(`Bench \\d ${time}:00 AM to \\d+:00 [AP]M ${number} `),
  );
  expect(partOf(page, DAY_GROUP.late)).toContain(number);
  setClock(MONDAY + 30 * DAY_MS);
  staff = await signedIn();
  expect(partOf(await staff.get("/shop"), DAY_GROUP.late)).toContain(number);
  setClock(MONDAY);
  staff = await signedIn();
});

it("asks why, keeps what was typed, and says what stands in the way", async () => {
  const { number } = await aJob();
  await staff.post(`/shop/receive/${number}`);
  const needed = await move(number, "set-aside", "received", { note: "  " });
  expect(needed.status).toBe(422);
  expect(wordsOf(needed)).toContain(moveRefusedText({ reason: "note-needed" }));
  const late = await move(number, "set-aside", "on-bench", { note: "Waits for its owner" });
  expect(late.status).toBe(409);
  expect(wordsOf(late)).toContain(moveRefusedText({ reason: "changed-meanwhile", state: "received" }));
  expect(late.text).toMatch(/<textarea[^>]*>Waits for its owner<\/textarea>/);
  expect((await move(number, "ship", "received")).status).toBe(409);
  for (const nonsense of [{}, { move: "fly", ifState: "received" }, { move: "start", ifState: "lost" }])
    expect((await staff.post(`/shop/jobs/${number}/state`, nonsense)).status).toBe(409);
  await move(number, "start", "received");
  const incomplete = await move(number, "finish", "on-bench");
  expect(incomplete.status).toBe(409);
  expect(wordsOf(incomplete)).toContain("The bench sheet is not complete. Still open: Slip as found");
  expect(wordsOf(await staff.get(`/shop/jobs/${number}`))).toContain("State: On the bench");
});

it("takes back the last move with a reason, and shows both in the history", async () => {
  const { number } = await aJob();
  await staff.post(`/shop/receive/${number}`);
  await move(number, "start", "received");
  const before = await staff.get(`/shop/jobs/${number}`);
  expect(wordsOf(before)).toContain(MOVES.undo(MOVE_WORDS.start.button));
  const undo = (note: string, ifState = "on-bench") => staff.post(`/shop/jobs/${number}/undo`, { note, ifState });
  expect((await undo("")).status).toBe(422);
  expect((await undo("x", "nowhere")).status).toBe(409);
  await undo("Wrong job");
  const undone = await undo("Wrong job");
  expect(undone.path).toBe(`/shop/jobs/${number}?done=undone`);
  expect(wordsOf(undone)).toContain("State: Received");
  expect(wordsOf(undone)).toMatch(/Shop, Manager Put on the bench .*Shop, Manager Last move taken back Wrong job $/);
  expect(wordsOf(undone)).toContain(MOVES.undo(MOVE_WORDS.receive.button));
});
