import { runInDurableObject } from "cloudflare:test";
import { expect, it } from "vitest";
import { JOB_MOVE_NAMES, type JobMoveName } from "#shared/job/job-moves.ts";
import { serialOf } from "#shared/shop/job-number.ts";
import { JOB_STATES, type JobState } from "#shared/shop/job-state.ts";
import { aBooking, aLedger, DAY, type LedgerStub, MINUTE, MONDAY, setClock } from "#tests/ledger/a-ledger.ts";
import { skipWholeSheet } from "#tests/ledger/complete-sheet.ts";

/** Written down by hand from how a shop works: state, button, new state. What is not here must be refused. */
const BY_BUTTON = `
  booked               receive     received
  received             start       on-bench
  received             set-aside   set-aside
  received             return      returned-unrepaired
  on-bench             await-part  part-to-come
  on-bench             finish      set
  on-bench             set-aside   set-aside
  on-bench             return      returned-unrepaired
  owner-to-decide      set-aside   set-aside
  owner-to-decide      return      returned-unrepaired
  part-to-come         part-came   on-bench
  part-to-come         set-aside   set-aside
  part-to-come         return      returned-unrepaired
  set                  reopen      on-bench
  set                  ship        shipped
  set-aside            take-up     on-bench
  set-aside            return      returned-unrepaired
  shipped              close       closed
  returned-unrepaired  close       closed`;
const LISTED = BY_BUTTON.trim()
  .split("\n")
  .map((line) => line.trim().split(/\s+/) as [JobState, JobMoveName, JobState]);
const NEEDS_WHY: readonly JobMoveName[] = ["set-aside", "return", "await-part"];

const moveBy = (ledger: LedgerStub, number: string, move: JobMoveName, ifState: JobState, note: string | null = null) =>
  ledger.moveJob({ number, move, staff: "Wilma Bench", note, ifState });

/** Puts a job into a state without asking how it got there. */
const force = (ledger: LedgerStub, number: string, state: JobState) =>
  runInDurableObject(ledger, (_, { storage }) => {
    storage.sql.exec("UPDATE job SET state = ? WHERE serial = ?", state, serialOf(number));
  });

it("makes each move by a button that the shop's own list has, and refuses every other", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  await skipWholeSheet(ledger, number);
  let made = 0;
  for (const state of JOB_STATES) {
    const allowed = LISTED.filter(([from]) => from === state);
    for (const move of JOB_MOVE_NAMES) {
      await force(ledger, number, state);
      const to = allowed.find(([, name]) => name === move)?.[2];
      const answer = await moveBy(ledger, number, move, state, "Because of the test");
      if (to === undefined) {
        const names = allowed.map(([, name]) => name).sort();
        if (answer.ok) throw new Error(`${move} was made from ${state}`);
        expect(answer.refusal).toMatchObject({ reason: "not-allowed" });
        expect("allowed" in answer.refusal && [...answer.refusal.allowed].sort()).toEqual(names);
        expect((await ledger.job(number))?.state).toBe(state);
      } else {
        expect(answer).toMatchObject({ ok: true, value: { state: to } });
        made += 1;
      }
    }
  }
  expect(made).toBe(LISTED.length);
});

it("keeps who moved a job, when, and why, in the order in which it happened", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  await moveBy(ledger, number, "receive", "booked");
  await setClock(ledger, MONDAY + MINUTE);
  await ledger.moveJob({ number, move: "start", staff: "Otto Hand", note: " Box was wet ", ifState: "received" });
  await moveBy(ledger, number, "await-part", "on-bench", "No shaft left");
  expect((await ledger.job(number))?.history).toEqual([
    { at: MONDAY, who: "owner", what: "booked", staff: null, note: null },
    { at: MONDAY, who: "shop", what: "receive", staff: "Wilma Bench", note: null },
    { at: MONDAY + MINUTE, who: "shop", what: "start", staff: "Otto Hand", note: "Box was wet" },
    { at: MONDAY + MINUTE, who: "shop", what: "await-part", staff: "Wilma Bench", note: "No shaft left" },
  ]);
});

it("asks why where somebody will ask later", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  for (const move of NEEDS_WHY) {
    await force(ledger, number, "on-bench");
    for (const note of [null, "", "   "])
      expect(await moveBy(ledger, number, move, "on-bench", note)).toEqual({
        ok: false,
        refusal: { reason: "note-needed" },
      });
    expect(await moveBy(ledger, number, move, "on-bench", "No longer made")).toMatchObject({ ok: true });
  }
});

it("makes the same move once, however often it is sent", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  const wish = { number, move: "receive", staff: "Wilma Bench", note: null, ifState: "booked" } as const;
  const first = await ledger.moveJob(wish);
  await setClock(ledger, MONDAY + MINUTE);
  expect(await ledger.moveJob(wish)).toEqual(first);
  expect((await ledger.job(number))?.history).toHaveLength(2);
  // Somebody else's tap on a page that still showed the old state is told what there is now.
  expect(await ledger.moveJob({ ...wish, staff: "Otto Hand" })).toEqual({
    ok: false,
    refusal: { reason: "changed-meanwhile", state: "received" },
  });
  await moveBy(ledger, number, "start", "received");
  expect(await ledger.moveJob(wish)).toMatchObject({ refusal: { reason: "changed-meanwhile", state: "on-bench" } });
  expect(await moveBy(ledger, "0", "receive", "booked")).toEqual({ ok: false, refusal: { reason: "no-such-job" } });
});

it("does not call a unit set before its sheet is complete", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  await force(ledger, number, "on-bench");
  expect(await moveBy(ledger, number, "finish", "on-bench")).toMatchObject({
    refusal: { reason: "not-ready", block: { what: "sheet-not-complete" } },
  });
  expect((await ledger.job(number))?.state).toBe("on-bench");
  await skipWholeSheet(ledger, number);
  expect(await moveBy(ledger, number, "finish", "on-bench")).toMatchObject({ ok: true, value: { state: "set" } });
});

const undo = (ledger: LedgerStub, number: string, ifState: JobState, note = "Wrong button") =>
  ledger.undoMove({ number, staff: "Otto Hand", note, ifState });

it("takes back every move by a button, one after the other, and keeps both in the history", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  await skipWholeSheet(ledger, number);
  const way: readonly [JobMoveName, JobState][] = [
    ["receive", "booked"],
    ["start", "received"],
    ["await-part", "on-bench"],
    ["part-came", "part-to-come"],
    ["set-aside", "on-bench"],
    ["take-up", "set-aside"],
    ["finish", "on-bench"],
    ["reopen", "set"],
    ["finish", "on-bench"],
    ["ship", "set"],
    ["close", "shipped"],
  ];
  for (const [move, from] of way) expect(await moveBy(ledger, number, move, from, "why")).toMatchObject({ ok: true });
  let state: JobState = "closed";
  for (const [, from] of way.toReversed()) {
    expect(await undo(ledger, number, state, "  ")).toEqual({ ok: false, refusal: { reason: "note-needed" } });
    const undone = await undo(ledger, number, state);
    expect(undone).toMatchObject({ ok: true, value: { state: from } });
    // Sent twice it takes back one move, not two.
    expect(await undo(ledger, number, state)).toEqual(undone);
    state = from;
  }
  expect(await undo(ledger, number, "booked", "Once more")).toEqual({
    ok: false,
    refusal: { reason: "nothing-to-undo" },
  });
  const moves = (await ledger.job(number))!.history.filter(({ what }) => !what.startsWith("record"));
  expect(moves.map(({ what }) => what)).toEqual(["booked", ...way.map(([move]) => move), ...way.map(() => "undone")]);
  expect(moves.at(-1)).toMatchObject({ who: "shop", staff: "Otto Hand", note: "Wrong button" });
});

it("never takes back what the owner's answer brought about, nor a booking's end", async () => {
  const ledger = await aLedger();
  const { number, booking } = await aBooking(ledger);
  await moveBy(ledger, number, "receive", "booked");
  await moveBy(ledger, number, "start", "received");
  await runInDurableObject(ledger, (_, { storage: { sql } }) => {
    sql.exec(
      `INSERT INTO job_event (job, step, at, who, what, from_state) VALUES (?1, 3, 0, 'shop', 'ask-owner', 'on-bench'),
        (?1, 4, 0, 'owner', 'owner-answered', 'owner-to-decide')`,
      serialOf(number),
    );
  });
  expect(await undo(ledger, number, "on-bench")).toEqual({ ok: false, refusal: { reason: "nothing-to-undo" } });
  // A move by a button after it goes back as far as the answer.
  await moveBy(ledger, number, "await-part", "on-bench", "No shaft left");
  expect(await undo(ledger, number, "part-to-come")).toMatchObject({ ok: true, value: { state: "on-bench" } });
  expect(await undo(ledger, number, "on-bench", "Another reason")).toMatchObject({
    refusal: { reason: "nothing-to-undo" },
  });
  const other = await aBooking(ledger);
  await ledger.cancelBooking({ booking: other.booking, linkHash: "", by: "shop" });
  expect(await undo(ledger, other.number, "cancelled")).toMatchObject({ refusal: { reason: "nothing-to-undo" } });
  expect(await undo(ledger, number, "received")).toEqual({
    ok: false,
    refusal: { reason: "changed-meanwhile", state: "on-bench" },
  });
  expect(await undo(ledger, "0", "booked")).toEqual({ ok: false, refusal: { reason: "no-such-job" } });
  expect(booking).not.toBe(other.booking);
});

it("goes back to a question only while the owner can still answer it", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  await force(ledger, number, "owner-to-decide");
  await moveBy(ledger, number, "set-aside", "owner-to-decide", "On holiday");
  expect(await undo(ledger, number, "set-aside")).toMatchObject({ refusal: { reason: "nothing-to-undo" } });
  expect(await moveBy(ledger, number, "take-up", "set-aside")).toMatchObject({ value: { state: "on-bench" } });
});

it("lets no owner change a booking once the unit is here, and the shop only its bench time", async () => {
  const ledger = await aLedger();
  const { number, booking, linkHash } = await aBooking(ledger);
  const [, offer] = await ledger.offers({ verdict: "slip-check" });
  await moveBy(ledger, number, "receive", "booked");
  const refused = (state: JobState) => ({ ok: false, refusal: { reason: "unit-here", state } });
  const owner = { booking, linkHash, by: "owner" } as const;
  const shop = { booking, linkHash: "", by: "shop", staff: "Wilma Bench" } as const;
  expect(await ledger.moveBooking({ ...owner, offer: offer!.id })).toEqual(refused("received"));
  expect(await ledger.cancelBooking(owner)).toEqual(refused("received"));
  expect(await ledger.cancelBooking(shop)).toEqual(refused("received"));
  const before = (await ledger.job(number))!;
  const moved = await ledger.moveBooking({ ...shop, offer: offer!.id });
  expect(moved).toMatchObject({ ok: true, value: { state: "received", postBy: before.postBy } });
  expect((await ledger.job(number))!.history.at(-1)).toMatchObject({ what: "moved", staff: "Wilma Bench" });
  for (const state of ["set", "set-aside", "shipped", "returned-unrepaired", "closed"] as const) {
    await force(ledger, number, state);
    expect(await ledger.moveBooking({ ...shop, offer: "b2.0" })).toEqual(refused(state));
  }
});

it("offers a unit that is here the time before one could come by post", async () => {
  const ledger = await aLedger();
  const { number, booking } = await aBooking(ledger);
  const [byPost] = await ledger.offers({ verdict: "slip-check" });
  const [here] = await ledger.offers({ verdict: "slip-check", unitHere: true });
  expect([byPost?.date, here?.date]).toEqual(["2040-05-11", "2040-05-07"]);
  expect(here!.start * 15 * MINUTE).toBe(MONDAY);
  const wish = { booking, linkHash: "", by: "shop", offer: here!.id } as const;
  // Not yet here, it is bound by the post.
  expect(await ledger.moveBooking(wish)).toMatchObject({ refusal: { why: "before-arrival" } });
  await moveBy(ledger, number, "receive", "booked");
  expect(await ledger.moveBooking(wish)).toMatchObject({
    ok: true,
    value: { booking: { time: { date: "2040-05-07" } } },
  });
});

it("receives a late parcel, whose time has passed, and gives it new time", async () => {
  const ledger = await aLedger();
  const { number, booking } = await aBooking(ledger);
  await setClock(ledger, MONDAY + 7 * DAY);
  expect(await moveBy(ledger, number, "receive", "booked")).toMatchObject({ ok: true });
  const [offer] = await ledger.offers({ verdict: "slip-check", unitHere: true });
  const moved = await ledger.moveBooking({ booking, linkHash: "", by: "shop", offer: offer!.id });
  expect(moved).toMatchObject({ ok: true, value: { booking: { time: { date: "2040-05-14" }, keepsTime: true } } });
});
