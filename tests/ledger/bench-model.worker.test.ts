import { evictDurableObject, runDurableObjectAlarm } from "cloudflare:test";
import * as fc from "fast-check";
import { expect, it } from "vitest";
import {
  aBookingWish,
  aHoldWish,
  aLedger,
  DAY,
  dullAnswers,
  type LedgerStub,
  MINUTE,
  MONDAY,
  rebuildAnswers,
  setClock,
  takenQuanta,
} from "#tests/ledger/a-ledger.ts";
import { BenchModel, deadlineOf, isWorked, quartersOf } from "#tests/ledger/bench-model.ts";

type Real = { readonly ledger: LedgerStub };
type Command = fc.AsyncCommand<BenchModel, Real>;

/** From Thursday the 10th, 11:00 UTC (an hour before opening), for six days. */
const FIRST_START = Date.UTC(2040, 4, 10, 11);
const start = fc
  .tuple(fc.nat(5), fc.nat(47))
  .map(([days, quarters]) => FIRST_START + days * DAY + quarters * 15 * MINUTE);
const bench = fc.constantFrom("b1", "b2");
const offerOf = (on: string, startsAt: number) => `${on}.${(startsAt / (15 * MINUTE)).toString(36)}`;
const pick = <Item>(items: readonly Item[], index: number) => items[index % items.length]!;

/** What the ledger stores is what was counted by hand, but for holds that are over and not yet swept. */
async function agree({ ledger }: Real, model: BenchModel) {
  const over = new Set(
    model.holds.filter(({ state, until }) => state === "open" && until <= model.now).map(({ id }) => id),
  );
  const stored = (await takenQuanta(ledger)).filter(({ taken_by }) => !over.has(taken_by));
  const byHand = [...model.taken].map(([quarter, by]) => `${quarter} ${by}`);
  expect(stored.map((row) => `${row.bench} ${row.quantum} ${row.taken_by}`).sort()).toEqual(byHand.sort());
}

const command = (name: string, check: (model: BenchModel) => boolean, run: Command["run"]): Command => ({
  check,
  run: async (model, real) => {
    await run(model, real);
    await agree(real, model);
  },
  toString: () => name,
});
const always = () => true;

const hold = fc.tuple(bench, start, fc.boolean()).map(([on, startsAt, long]) =>
  command(`hold ${offerOf(on, startsAt)}${long ? " long" : ""}`, always, async (model, { ledger }) => {
    const wish = aHoldWish(offerOf(on, startsAt), { verdict: long ? "full-rebuild" : "slip-check" });
    const quarters = quartersOf(on, startsAt, long);
    const answer = await ledger.hold(wish);
    expect(await ledger.hold(wish)).toEqual(answer);
    if (answer.ok) {
      expect(model.isFree(quarters)).toBe(true);
      expect(isWorked(startsAt, long)).toBe(true);
      model.holds.push({ id: wish.id, until: model.now + 15 * MINUTE, long, quarters, state: "open" });
      model.take(quarters, wish.id);
      return;
    }
    if (answer.refusal.reason !== "slot-not-offered") throw new Error(answer.refusal.reason);
    expect(answer.refusal.why === "taken").toBe(
      isWorked(startsAt, long) &&
        !model.isFree(quarters) &&
        !["before-arrival", "in-the-past"].includes(answer.refusal.why),
    );
    expect(answer.refusal.why === "closed").toBe(!isWorked(startsAt, long) && answer.refusal.why !== "in-the-past");
    for (const { bench: other, start: from, end } of answer.refusal.offers)
      for (let quarter = from as number; quarter < end; quarter += 1)
        expect(model.taken.has(`${other} ${quarter}`)).toBe(false);
  }),
);

const book = fc.tuple(fc.nat(), fc.boolean()).map(([index, needsLong]) =>
  command(
    `book hold ${index}${needsLong ? " long" : ""}`,
    ({ holds }) => holds.length > 0,
    async (model, { ledger }) => {
      const held = pick(model.holds, index);
      const wish = aBookingWish(held.id, { answers: needsLong ? rebuildAnswers : dullAnswers });
      const answer = await ledger.book(wish);
      expect(await ledger.book(wish)).toEqual(answer);
      const isGood = held.state === "open" && held.until > model.now;
      // An ended hold is forgotten after a day, and then nobody ever made it.
      if (!isGood && !answer.ok) expect(["hold-ended", "no-such-hold"]).toContain(answer.refusal.reason);
      if (isGood && needsLong && !held.long) expect(answer).toMatchObject({ refusal: { reason: "needs-more-time" } });
      expect(answer.ok).toBe(isGood && (held.long || !needsLong));
      if (!answer.ok) return;
      const quarters = needsLong ? held.quarters : held.quarters.slice(0, 4);
      const startsAt = Number(held.quarters[0]!.split(" ")[1]) * 15 * MINUTE;
      model.free(held.id);
      model.take(quarters, wish.id);
      held.state = "booked";
      model.bookings.push({
        id: wish.id,
        linkHash: wish.ownerLinkHash,
        long: needsLong,
        startsAt,
        quarters,
        state: "booked",
      });
    },
  ),
);

const who = fc.constantFrom("owner" as const, "shop" as const);
const hasBooking = ({ bookings }: BenchModel) => bookings.length > 0;

const move = fc.tuple(fc.nat(), who, bench, start).map(([index, by, on, startsAt]) =>
  command(`move booking ${index} to ${offerOf(on, startsAt)} by ${by}`, hasBooking, async (model, { ledger }) => {
    const booking = pick(model.bookings, index);
    const { id, linkHash, long } = booking;
    const quarters = quartersOf(on, startsAt, long);
    const isThere = quarters[0] === booking.quarters[0];
    const answer = await ledger.moveBooking({ booking: id, linkHash, by, offer: offerOf(on, startsAt) });
    const isLate = by === "owner" && model.now > deadlineOf(booking.startsAt);
    if (booking.state === "cancelled") expect(answer).toMatchObject({ refusal: { reason: "already-cancelled" } });
    else if (isThere) expect(answer.ok).toBe(true);
    else if (isLate) expect(answer).toMatchObject({ refusal: { reason: "too-late" } });
    else if (answer.ok) expect(model.isFree(quarters, id) && isWorked(startsAt, long)).toBe(true);
    else if (answer.refusal.reason === "slot-not-offered" && answer.refusal.why === "taken")
      expect(model.isFree(quarters, id)).toBe(false);
    if (!answer.ok) return;
    model.free(id);
    model.take(quarters, id);
    Object.assign(booking, { quarters, startsAt });
  }),
);

const cancel = fc.tuple(fc.nat(), who).map(([index, by]) =>
  command(`cancel booking ${index} by ${by}`, hasBooking, async (model, { ledger }) => {
    const booking = pick(model.bookings, index);
    const answer = await ledger.cancelBooking({ booking: booking.id, linkHash: booking.linkHash, by });
    const isLate = by === "owner" && model.now > deadlineOf(booking.startsAt);
    expect(answer.ok).toBe(booking.state === "booked" && !isLate);
    if (!answer.ok) return;
    model.free(booking.id);
    booking.state = "cancelled";
  }),
);

const pass = fc.constantFrom(1, 14, 15, 60, 20 * 60).map((minutes) =>
  command(`${minutes} min pass`, always, async (model, { ledger }) => {
    model.pass(minutes * MINUTE);
    await setClock(ledger, model.now);
  }),
);

const ring = fc.constant(
  command("alarm rings", always, async (_, { ledger }) => {
    await runDurableObjectAlarm(ledger);
  }),
);

const evict = fc.constant(
  command("evict", always, async (model, { ledger }) => {
    await evictDurableObject(ledger);
    await setClock(ledger, model.now);
  }),
);

it("keeps bench time as somebody would who counts quarter-hours by hand", { timeout: 180_000 }, async () => {
  const commands = fc.commands([hold, hold, hold, book, book, move, cancel, pass, ring, evict], { maxCommands: 40 });
  await fc.assert(
    fc.asyncProperty(commands, async (steps) => {
      const ledger = await aLedger({ now: MONDAY });
      await fc.asyncModelRun(() => ({ model: new BenchModel(MONDAY), real: { ledger } }), steps);
    }),
    { numRuns: 25 },
  );
});
