import { evictDurableObject } from "cloudflare:test";
import { expect, it } from "vitest";
import {
  aBooking,
  aHoldWish,
  aLedger,
  DAY,
  MONDAY,
  rebuildAnswers,
  setClock,
  soonest,
  takenQuanta,
} from "#tests/ledger/a-ledger.ts";

/** Thursday the 10th, eight in New York: one working day before the soonest slot. */
const DEADLINE = Date.UTC(2040, 4, 10, 12);
const asOwner = (made: { booking: string; linkHash: string }) =>
  ({ booking: made.booking, linkHash: made.linkHash, by: "owner" }) as const;
const asShop = (made: { booking: string }) => ({ booking: made.booking, linkHash: "", by: "shop" }) as const;

it("moves a booking to an offered time, and frees the old one", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  const [, , offer] = await ledger.offers({ verdict: "slip-check" });
  const moved = await ledger.moveBooking({ ...asOwner(made), offer: offer!.id });
  expect(moved).toMatchObject({
    ok: true,
    value: {
      number: made.number,
      booking: { id: made.booking, sequence: 1, time: { bench: offer!.bench, date: offer!.date } },
      postBy: offer!.postBy,
      history: [{ what: "booked" }, { what: "moved", who: "owner", at: MONDAY }],
    },
  });
  const taken = await takenQuanta(ledger);
  expect(taken.map(({ quantum }) => quantum)).toEqual([0, 1, 2, 3].map((count) => offer!.start + count));
  // The old time is offered again.
  expect(await soonest(ledger)).toBe(`b1.${(Date.UTC(2040, 4, 11, 12) / 900_000).toString(36)}`);
});

it("moves a booking onto time that reaches into its own", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger, {
    hold: { verdict: "full-rebuild" },
    booking: { answers: rebuildAnswers },
  });
  const [first] = await takenQuanta(ledger);
  const offer = `b1.${(first!.quantum + 1).toString(36)}`;
  expect(await ledger.moveBooking({ ...asOwner(made), offer })).toMatchObject({ ok: true });
  const taken = await takenQuanta(ledger);
  expect(taken).toHaveLength(16);
  expect(taken[0]!.quantum).toBe(first!.quantum + 1);
});

it("takes as long as the job's verdict needs, whatever the offer was made for", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger, { hold: { verdict: "full-rebuild" }, booking: { answers: rebuildAnswers } });
  const [, , offer] = await ledger.offers({ verdict: "slip-check" });
  await ledger.moveBooking({ ...asOwner(made), offer: offer!.id });
  expect(await takenQuanta(ledger)).toHaveLength(16);
});

it("refuses a taken time with fresh offers, and the booking stays as it is", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  const before = await takenQuanta(ledger);
  const other = aHoldWish(await soonest(ledger));
  await ledger.hold(other);
  const answer = await ledger.moveBooking({ ...asOwner(made), offer: other.offer });
  expect(answer).toMatchObject({
    ok: false,
    refusal: { reason: "slot-not-offered", why: "taken", offers: [{}, {}, {}] },
  });
  expect(await takenQuanta(ledger)).toEqual(expect.arrayContaining(before));
  expect(await ledger.job(made.number)).toMatchObject({ booking: { sequence: 0 } });
});

it("does nothing when it is asked for the time it has: the same request sent twice", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  const [, offer] = await ledger.offers({ verdict: "slip-check" });
  const wish = { ...asOwner(made), offer: offer!.id };
  const moved = await ledger.moveBooking(wish);
  expect(await ledger.moveBooking(wish)).toEqual(moved);
});

it("lets the owner change until one working day before, to the millisecond, and the shop at any time", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  await setClock(ledger, DEADLINE + 1);
  const [offer] = await ledger.offers({ verdict: "slip-check" });
  const tooLate = { ok: false, refusal: { reason: "too-late", until: DEADLINE } };
  expect(await ledger.moveBooking({ ...asOwner(made), offer: offer!.id })).toEqual(tooLate);
  expect(await ledger.cancelBooking(asOwner(made))).toEqual(tooLate);
  expect(await ledger.moveBooking({ ...asShop(made), offer: offer!.id })).toMatchObject({
    ok: true,
    value: { history: [{ who: "owner" }, { who: "shop", what: "moved" }] },
  });
  const early = await aBooking(await aLedger());
  expect(early).toBeDefined();
});

it("lets the owner cancel at the very deadline", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  await setClock(ledger, DEADLINE);
  expect(await ledger.cancelBooking(asOwner(made))).toMatchObject({ ok: true, value: { state: "cancelled" } });
});

it("frees the time of a cancelled booking, and keeps its history", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  expect(await ledger.cancelBooking(asOwner(made))).toMatchObject({
    ok: true,
    value: {
      state: "cancelled",
      booking: { sequence: 1 },
      history: [{ what: "booked" }, { what: "cancelled", who: "owner" }],
    },
  });
  expect(await takenQuanta(ledger)).toEqual([]);
  expect(await ledger.jobByLink(made.linkHash)).toMatchObject({ state: "cancelled" });
});

it("answers a cancellation that is asked for again with the first one, even past the deadline", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  const cancelled = await ledger.cancelBooking(asOwner(made));
  await aBooking(ledger);
  await setClock(ledger, DEADLINE + DAY);
  expect(await ledger.cancelBooking(asOwner(made))).toEqual(cancelled);
  expect(await ledger.cancelBooking(asShop(made))).toEqual(cancelled);
  // The time went to another owner meanwhile, and stays there.
  expect(await takenQuanta(ledger)).toHaveLength(4);
});

it("does not move what is cancelled", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  await ledger.cancelBooking(asShop(made));
  const refused = { ok: false, refusal: { reason: "already-cancelled" } };
  const [offer] = await ledger.offers({ verdict: "slip-check" });
  expect(await ledger.moveBooking({ ...asOwner(made), offer: offer!.id })).toEqual(refused);
  const same = `b1.${(Date.UTC(2040, 4, 11, 12) / 900_000).toString(36)}`;
  expect(await ledger.moveBooking({ ...asShop(made), offer: same })).toEqual(refused);
});

it("opens no booking to the link of another one", async () => {
  const ledger = await aLedger();
  const [one, other] = [await aBooking(ledger), await aBooking(ledger)];
  const crossed = { booking: one.booking, linkHash: other.linkHash, by: "owner" } as const;
  const refused = { ok: false, refusal: { reason: "no-such-booking" } };
  const [offer] = await ledger.offers({ verdict: "slip-check" });
  expect(await ledger.cancelBooking(crossed)).toEqual(refused);
  expect(await ledger.moveBooking({ ...crossed, offer: offer!.id })).toEqual(refused);
  expect(await ledger.cancelBooking({ ...crossed, linkHash: "" })).toEqual(refused);
  expect(await ledger.cancelBooking({ booking: "nobody's", linkHash: "", by: "shop" })).toEqual(refused);
  expect(
    await ledger.moveBooking({ ...crossed, offer: `b2.${(Date.UTC(2040, 4, 11, 12) / 900_000).toString(36)}` }),
  ).toEqual(refused);
});

it("ends the old link when a new one is made", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  const wish = { number: made.number, generation: 2, linkHash: "hash-of-the-new-link" };
  expect(await ledger.reissueLink(wish)).toMatchObject({ ok: true, value: { linkGeneration: 2 } });
  expect(await ledger.jobByLink(made.linkHash)).toBeNull();
  expect((await ledger.jobByLink(wish.linkHash))?.number).toBe(made.number);
  expect(await ledger.cancelBooking(asOwner(made))).toMatchObject({ refusal: { reason: "no-such-booking" } });
  // Somebody else who looked before that would make the second link again.
  expect(await ledger.reissueLink(wish)).toEqual({ ok: false, refusal: { reason: "changed-meanwhile" } });
  expect(await ledger.reissueLink({ ...wish, number: "0" })).toEqual({ ok: false, refusal: { reason: "no-such-job" } });
});

it("lets an owner's link expire", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  await setClock(ledger, MONDAY + 399 * DAY);
  expect(await ledger.jobByLink(made.linkHash)).not.toBeNull();
  await setClock(ledger, MONDAY + 400 * DAY);
  expect(await ledger.jobByLink(made.linkHash)).toBeNull();
});

it("forgets nothing when it is evicted between steps", async () => {
  const ledger = await aLedger();
  const evict = async () => {
    await evictDurableObject(ledger);
    await setClock(ledger, MONDAY);
  };
  const offer = await soonest(ledger);
  await evict();
  const hold = aHoldWish(offer);
  const held = await ledger.hold(hold);
  await evict();
  expect(await ledger.hold(hold)).toEqual(held);
  expect(await ledger.hold(aHoldWish(offer))).toMatchObject({ refusal: { why: "taken" } });
  await evict();
  const made = await aBooking(ledger);
  const job = await ledger.job(made.number);
  await evict();
  expect(await ledger.job(made.number)).toEqual(job);
  await evict();
  expect(await ledger.cancelBooking(asOwner(made))).toMatchObject({ ok: true });
  await evict();
  expect(await ledger.job(made.number)).toMatchObject({ state: "cancelled" });
  expect(await takenQuanta(ledger)).toHaveLength(4);
});
