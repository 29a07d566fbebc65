import { evictDurableObject, runDurableObjectAlarm } from "cloudflare:test";
import * as fc from "fast-check";
import { expect, it } from "vitest";
import type { JobMoveName } from "#shared/job/job-moves.ts";
import type { JobState } from "#shared/shop/job-state.ts";
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
import {
  BenchModel,
  buttonsIn,
  deadlineOf,
  MOVABLE,
  type ModelBooking,
  pressedIn,
  quartersOf,
  whyNot,
} from "#tests/ledger/bench-model.ts";
import { skipWholeSheet } from "#tests/ledger/complete-sheet.ts";
import { untilMet } from "#tests/support/until-met.ts";

type Real = { readonly ledger: LedgerStub };
type Command = fc.AsyncCommand<BenchModel, Real>;

/** An hour before opening until an hour after closing, mostly on the first days that a unit posted on Monday is there. */
const FRIDAY = Date.UTC(2040, 4, 11, 11);
const start = fc
  .tuple(fc.constantFrom(0, 3, 0, 3, 0, 3, 4, -1, 1), fc.oneof(fc.integer({ min: 2, max: 12 }), fc.nat(22)))
  .map(([days, halves]) => FRIDAY + days * DAY + halves * 30 * MINUTE);
/** What has happened, so that a law that was never put to the test is not taken for one that holds. */
const seen = new Set<string>();
const bench = fc.constantFrom("b1", "b1", "b2");
type Aim = { readonly bench: string; readonly startsAt: number };
/** Now and then right at a quarter-hour that somebody has: chance alone hardly ever meets one. */
const aim = fc
  .tuple(bench, start, fc.constantFrom(false, false, true), fc.nat(100))
  .map(([on, startsAt, atTaken, index]) => (model: BenchModel): Aim => {
    const taken = [...model.taken.keys()];
    if (!atTaken || taken.length === 0) return { bench: on, startsAt };
    const [of = "", quarter] = pick(taken, index).split(" ");
    return { bench: of, startsAt: Number(quarter) * 15 * MINUTE };
  });
const offerOf = ({ bench: on, startsAt }: Aim) => `${on}.${(startsAt / (15 * MINUTE)).toString(36)}`;
/** Counted from the newest: the older ones are mostly over. */
const nth = fc.constantFrom(0, 0, 0, 1, 2, 5);
const pick = <Item>(items: readonly Item[], index: number) => items.at(-1 - (index % items.length))!;

/** What the ledger stores is what was counted by hand, but for holds that are over and not yet swept. */
async function agree({ ledger }: Real, model: BenchModel) {
  const over = new Set(
    model.holds.filter(({ state, until }) => state === "open" && until <= model.now).map(({ id }) => id),
  );
  const stored = (await takenQuanta(ledger)).filter(({ claim }) => !over.has(claim));
  const byHand = [...model.taken].map(([quarter, by]) => `${quarter} ${by}`);
  expect(stored.map((row) => `${row.bench} ${row.quantum} ${row.claim}`).sort()).toEqual(byHand.sort());
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

const hold = fc.tuple(aim, fc.boolean()).map(([aimed, long]) =>
  command(`hold${long ? " long" : ""}`, always, async (model, { ledger }) => {
    const target = aimed(model);
    const wish = aHoldWish(offerOf(target), { verdict: long ? "full-rebuild" : "slip-check" });
    const quarters = quartersOf(target, long);
    const answer = await ledger.hold(wish);
    expect(await ledger.hold(wish)).toEqual(answer);
    const why = whyNot(model, { ...target, long });
    seen.add(`hold ${why}`);
    if (answer.ok) {
      expect(why).toBeNull();
      model.holds.push({ id: wish.id, until: model.now + 15 * MINUTE, long, quarters, state: "open" });
      model.take(quarters, wish.id);
      return;
    }
    if (answer.refusal.reason !== "slot-not-offered") throw new Error(answer.refusal.reason);
    expect(answer.refusal.why).toBe(why);
    for (const { bench: other, start: from, end } of answer.refusal.offers)
      for (let quarter = from as number; quarter < end; quarter += 1)
        expect(model.taken.has(`${other} ${quarter}`)).toBe(false);
  }),
);

const book = fc.tuple(nth, fc.boolean()).map(([index, needsLong]) =>
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
      const over = [held.state === "booked" ? "already-booked" : "hold-ended", "no-such-hold"];
      if (!isGood && !answer.ok) expect(over).toContain(answer.refusal.reason);
      if (isGood && needsLong && !held.long) expect(answer).toMatchObject({ refusal: { reason: "needs-more-time" } });
      seen.add(`book ${answer.ok ? "made" : answer.refusal.reason}`);
      expect(answer.ok).toBe(isGood && (held.long || !needsLong));
      if (!answer.ok) return;
      const quarters = needsLong ? held.quarters : held.quarters.slice(0, 4);
      const startsAt = Number(held.quarters[0]!.split(" ")[1]) * 15 * MINUTE;
      model.free(held.id);
      model.take(quarters, held.id);
      held.state = "booked";
      await skipWholeSheet(ledger, answer.value.jobNumber);
      model.bookings.push({
        id: wish.id,
        number: answer.value.jobNumber,
        pressed: [],
        claim: held.id,
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

const move = fc.tuple(nth, who, aim).map(([index, by, aimed]) =>
  command(`move booking ${index} by ${by}`, hasBooking, async (model, { ledger }) => {
    const target = aimed(model);
    const booking = pick(model.bookings, index);
    const { id, claim, linkHash, long } = booking;
    const quarters = quartersOf(target, long);
    const answer = await ledger.moveBooking({ booking: id, linkHash, by, offer: offerOf(target) });
    const expected = expectedMove();
    seen.add(`move ${expected}`);
    expect(answer.ok ? "moved" : "why" in answer.refusal ? answer.refusal.why : answer.refusal.reason).toBe(expected);
    if (!answer.ok) return;
    model.free(claim);
    model.take(quarters, claim);
    Object.assign(booking, { quarters, startsAt: target.startsAt });

    function expectedMove() {
      if (booking.state === "cancelled") return "already-cancelled";
      if (quarters[0] === booking.quarters[0] && model.hasAllTime(booking)) return "moved";
      if (by === "owner" ? booking.state !== "booked" : !MOVABLE.includes(booking.state)) return "unit-here";
      if (by === "owner" && model.now > deadlineOf(booking.startsAt)) return "too-late";
      const isHere = booking.state !== "booked";
      return whyNot(model, { ...target, long }, { butFor: claim, isHere }) ?? "moved";
    }
  }),
);

const cancel = fc.tuple(nth, who).map(([index, by]) =>
  command(`cancel booking ${index} by ${by}`, hasBooking, async (model, { ledger }) => {
    const booking = pick(model.bookings, index);
    const answer = await ledger.cancelBooking({ booking: booking.id, linkHash: booking.linkHash, by });
    const isLate = by === "owner" && model.now > deadlineOf(booking.startsAt);
    const isAgain = booking.state === "cancelled";
    const isHere = booking.state !== "booked";
    seen.add(`cancel ${isAgain ? "again" : answer.ok ? "done" : answer.refusal.reason}`);
    expect(answer.ok).toBe(isAgain || (!isHere && !isLate));
    if (!answer.ok) return;
    model.free(booking.claim);
    booking.state = "cancelled";
  }),
);

const staff = "Wilma Bench";

async function pressButton(model: BenchModel, { ledger }: Real, booking: ModelBooking, move: string) {
  const { number, state } = booking;
  const note = `note ${booking.pressed.length}`;
  const wish = { number, move: move as JobMoveName, staff, note, ifState: state as JobState };
  const answer = await ledger.moveJob(wish);
  expect(await ledger.moveJob(wish)).toEqual(answer);
  booking.pressed.push({ left: state });
  model.enter(booking, pressedIn(state, move));
  seen.add(`press ${move}`);
  const kept = booking.quarters.filter((quarter) => model.taken.get(quarter) === booking.claim).length;
  if (kept > 0 && kept < booking.quarters.length) seen.add(`with part of its time ${booking.state}`);
  if (!model.hasAllTime(booking)) seen.add(`without time ${booking.state}`);
  const keepsTime = model.hasAllTime(booking);
  expect(answer).toMatchObject({ ok: true, value: { state: booking.state, booking: { keepsTime } } });
}

const press = fc.tuple(nth, fc.nat(10)).map(([index, which]) =>
  command(`press button ${which} of job ${index}`, hasBooking, async (model, real) => {
    const booking = pick(model.bookings, index);
    const buttons = buttonsIn(booking.state);
    if (buttons.length > 0) await pressButton(model, real, booking, buttons[which % buttons.length]!);
  }),
);

/** From wherever it stands to the post: a way that chance alone hardly ever finds. */
const lead = nth.map((index) =>
  command(`lead job ${index} on until it is shipped`, hasBooking, async (model, real) => {
    const booking = pick(model.bookings, index);
    for (const move of ["receive", "take-up", "start", "part-came", "finish", "ship"])
      if (buttonsIn(booking.state).includes(move)) await pressButton(model, real, booking, move);
  }),
);

const takeBack = fc.tuple(nth, fc.nat()).map(([index, note]) =>
  command(`take back the last move of job ${index}`, hasBooking, async (model, { ledger }) => {
    const booking = pick(model.bookings, index);
    const { number, state } = booking;
    const wish = { number, staff, note: `undo ${note}`, ifState: state as JobState };
    const answer = await ledger.undoMove(wish);
    const last = booking.state === "cancelled" ? undefined : booking.pressed.pop();
    seen.add(`undo ${last === undefined ? "nothing" : state}`);
    if (last === undefined) return void expect(answer.ok).toBe(false);
    expect(await ledger.undoMove(wish)).toEqual(answer);
    model.enter(booking, last.left);
    expect(answer).toMatchObject({
      ok: true,
      value: { state: last.left, booking: { keepsTime: model.hasAllTime(booking) } },
    });
  }),
);

const pass = fc.constantFrom(1, 1, 1, 1, 14, 15, 60, 20 * 60).map((minutes) =>
  command(`${minutes} min pass`, always, async (model, { ledger }) => {
    model.pass(minutes * MINUTE);
    await setClock(ledger, model.now);
  }),
);

/** Into the bench time of a job, so that a part of it has begun. */
const passInto = fc.tuple(nth, fc.constantFrom(0, 10, 30)).map(([index, minutes]) =>
  command(`time passes to ${minutes} min after job ${index} began`, hasBooking, async (model, { ledger }) => {
    const { startsAt } = pick(model.bookings, index);
    model.pass(Math.max(0, startsAt + minutes * MINUTE - model.now));
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

const planning = [hold, hold, hold, book, book, move, move, move, move, cancel, pass, ring, evict];

it("keeps bench time as somebody would who counts quarter-hours by hand", { timeout: 180_000 }, async () => {
  await agreeAfterAnySequence(planning, {
    maxCommands: 50,
    numRuns: 25,
    mustMeet: [
      "hold null",
      "hold taken",
      "hold closed",
      "hold before-arrival",
      "book made",
      "book hold-ended",
      "book already-booked",
      "book needs-more-time",
      "move moved",
      "move taken",
      "move already-cancelled",
      "cancel done",
      "cancel again",
    ],
  });
});

const life = [press, press, press, press, press, lead, takeBack, takeBack];

it("keeps it through the whole life of every job, and back", { timeout: 180_000 }, async () => {
  await agreeAfterAnySequence([hold, hold, book, book, move, cancel, pass, passInto, ring, evict, ...life], {
    maxCommands: 60,
    numRuns: 40,
    mustMeet: [
      ...["receive", "start", "finish", "ship", "set-aside", "take-up", "return"].map((it) => `press ${it}`),
      "move unit-here",
      "undo nothing",
      "undo on-bench",
      "without time returned-unrepaired",
      "with part of its time returned-unrepaired",
    ],
  });
});

type Sequences = { readonly maxCommands: number; readonly numRuns: number; readonly mustMeet: readonly string[] };

async function agreeAfterAnySequence(
  kinds: readonly fc.Arbitrary<Command>[],
  { maxCommands, numRuns, mustMeet }: Sequences,
) {
  const commands = fc.commands([...kinds], { maxCommands, size: "max" });
  const law = fc.asyncProperty(commands, async (steps) => {
    const ledger = await aLedger({ now: MONDAY });
    await fc.asyncModelRun(() => ({ model: new BenchModel(MONDAY), real: { ledger } }), steps);
  });
  await untilMet({ seen, mustMeet }, (seed) => fc.assert(law, { numRuns, seed }));
}
