import { runInDurableObject } from "cloudflare:test";
import { expect, it } from "vitest";
import type { JobMoveName } from "#shared/job/job-moves.ts";
import { serialOf } from "#shared/shop/job-number.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import {
  aBooking,
  aBookingWish,
  aHoldWish,
  aLedger,
  DAY,
  type LedgerStub,
  MINUTE,
  rebuildAnswers,
  setClock,
  soonest,
  takenQuanta,
} from "#tests/ledger/a-ledger.ts";
import { skipWholeSheet } from "#tests/ledger/complete-sheet.ts";

/** Friday 2040-05-11, eight in New York: the soonest that a unit posted on Monday can be on a bench. */
const FRIDAY_EIGHT = Date.UTC(2040, 4, 11, 12);
const HOUR = 60 * MINUTE;

const act = async (ledger: LedgerStub, number: string, move: JobMoveName) => {
  const ifState = (await ledger.job(number))!.state;
  const moved = await ledger.moveJob({ number, move, staff: "Wilma Bench", note: "why", ifState });
  if (!moved.ok) throw new Error(`${move}: ${JSON.stringify(moved.refusal)}`);
  return moved.value;
};
const undo = async (ledger: LedgerStub, number: string) =>
  ledger.undoMove({ number, staff: "Wilma Bench", note: "why", ifState: (await ledger.job(number))!.state });

/** A rebuild of four hours from eight on, received, at work since nine. */
async function onBenchSinceNine() {
  const ledger = await aLedger();
  const made = await aBooking(ledger, { hold: { verdict: "full-rebuild" }, booking: { answers: rebuildAnswers } });
  await setClock(ledger, FRIDAY_EIGHT + HOUR);
  await act(ledger, made.number, "receive");
  await act(ledger, made.number, "start");
  return { ledger, ...made };
}

const quartersTaken = async (ledger: LedgerStub) => (await takenQuanta(ledger)).length;

it("gives the rest of its bench time to others when a unit goes back, and keeps what has begun", async () => {
  const { ledger, number } = await onBenchSinceNine();
  await setClock(ledger, FRIDAY_EIGHT + HOUR + 5 * MINUTE);
  expect((await act(ledger, number, "return")).booking.keepsTime).toBe(false);
  expect(await quartersTaken(ledger)).toBe(5);
  const here = await ledger.offers({ verdict: "slip-check", unitHere: true });
  expect(here[0]).toMatchObject({ bench: "b1", start: (FRIDAY_EIGHT + HOUR + 15 * MINUTE) / (15 * MINUTE) });
});

it("keeps its bench time while an owner decides or a part is to come, and while it is set", async () => {
  const { ledger, number } = await onBenchSinceNine();
  expect((await act(ledger, number, "await-part")).booking.keepsTime).toBe(true);
  await act(ledger, number, "part-came");
  await skipWholeSheet(ledger, number);
  expect((await act(ledger, number, "finish")).booking.keepsTime).toBe(true);
  expect(await quartersTaken(ledger)).toBe(16);
  expect((await act(ledger, number, "ship")).booking.keepsTime).toBe(false);
  expect(await quartersTaken(ledger)).toBe(4);
});

it("takes its time back with the unit, where nobody has it", async () => {
  const { ledger, number } = await onBenchSinceNine();
  await act(ledger, number, "set-aside");
  expect(await quartersTaken(ledger)).toBe(4);
  expect((await act(ledger, number, "take-up")).booking.keepsTime).toBe(true);
  expect(await quartersTaken(ledger)).toBe(16);
  await act(ledger, number, "return");
  expect(await undo(ledger, number)).toMatchObject({ ok: true, value: { booking: { keepsTime: true } } });
  expect(await quartersTaken(ledger)).toBe(16);
});

it("goes on without bench time where somebody has it, until it gets another", async () => {
  const { ledger, number, booking } = await onBenchSinceNine();
  await act(ledger, number, "set-aside");
  const held = await ledger.hold(
    aHoldWish(`b1.${((FRIDAY_EIGHT + 2 * HOUR) / (15 * MINUTE)).toString(36)}`, { unitHere: true }),
  );
  expect(held.ok).toBe(true);
  expect((await act(ledger, number, "take-up")).booking.keepsTime).toBe(false);
  expect(await quartersTaken(ledger)).toBe(4 + 4);
  // Its own old time is not its own any more: asked for, it is refused as anybody's would be.
  const wish = { booking, linkHash: "", by: "shop" } as const;
  expect(
    await ledger.moveBooking({ ...wish, offer: `b1.${(FRIDAY_EIGHT / (15 * MINUTE)).toString(36)}` }),
  ).toMatchObject({
    refusal: { why: "in-the-past" },
  });
  const [offer] = await ledger.offers({ verdict: "full-rebuild", unitHere: true });
  const moved = await ledger.moveBooking({ ...wish, offer: offer!.id });
  expect(moved).toMatchObject({ ok: true, value: { booking: { keepsTime: true } } });
  expect(await quartersTaken(ledger)).toBe(16 + 4);
});

it("does not ask for time that has passed meanwhile", async () => {
  const { ledger, number } = await onBenchSinceNine();
  await act(ledger, number, "set-aside");
  await setClock(ledger, FRIDAY_EIGHT + 3 * DAY);
  expect((await act(ledger, number, "take-up")).booking.keepsTime).toBe(false);
  expect(await quartersTaken(ledger)).toBe(4);
});

it("books and receives an unbooked parcel in one, on the soonest time", async () => {
  const ledger = await aLedger();
  const [offer] = await ledger.offers({ verdict: "slip-check", unitHere: true });
  expect(await ledger.hold(aHoldWish(offer!.id))).toMatchObject({ refusal: { why: "before-arrival" } });
  const held = await ledger.hold(aHoldWish(offer!.id, { unitHere: true }));
  if (!held.ok) throw new Error("Not held");
  const wish = aBookingWish(held.value.id, { by: "shop", staff: "Wilma Bench", unitHere: true });
  const booked = await ledger.book(wish);
  if (!booked.ok) throw new Error("Not booked");
  expect(await ledger.book(wish)).toEqual(booked);
  expect(await ledger.job(booked.value.jobNumber)).toMatchObject({
    state: "received",
    postBy: "2040-05-07",
    booking: { time: { date: "2040-05-07" }, keepsTime: true },
    history: [
      { who: "shop", what: "booked", staff: "Wilma Bench" },
      { who: "shop", what: "receive", staff: "Wilma Bench" },
    ],
  });
});

it("frees all of a booking that is cancelled, also where its time has begun", async () => {
  const ledger = await aLedger();
  const { booking, number } = await aBooking(ledger, { offer: await soonest(ledger) });
  await setClock(ledger, FRIDAY_EIGHT + 20 * MINUTE);
  await ledger.cancelBooking({ booking, linkHash: "", by: "shop", staff: "Wilma Bench" });
  expect(await quartersTaken(ledger)).toBe(0);
  const freed = await runInDurableObject(ledger, (_, { storage: { sql } }) =>
    sql.exec("SELECT freed_from - from_quantum AS n FROM booking WHERE job = ?", serialOf(number)).one(),
  );
  expect(freed).toEqual({ n: 0 });
  const over: JobState = "cancelled";
  expect((await ledger.job(number))!.state).toBe(over);
});
