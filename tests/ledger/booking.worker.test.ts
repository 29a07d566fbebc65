import { expect, it } from "vitest";
import {
  aBooking,
  aBookingWish,
  aHoldWish,
  aLedger,
  changeSettings,
  DAY,
  MINUTE,
  MONDAY,
  rebuildAnswers,
  setClock,
  someAnswers,
  soonest,
  takenQuanta,
  urgentAnswers,
} from "#tests/ledger/a-ledger.ts";

it("turns a hold into a job that says all the bench needs", async () => {
  const ledger = await aLedger();
  const { booking, number, wish } = await aBooking(ledger);
  const job = await ledger.job(number);
  // Worked by hand: posted Monday the 7th, four working days later is Friday the 11th at eight.
  expect(job).toMatchObject({
    number: "100S",
    state: "booked",
    bookedAt: MONDAY,
    booking: {
      id: booking,
      sequence: 0,
      changeableUntil: Date.UTC(2040, 4, 10, 12),
      time: {
        bench: "b1",
        benchName: "Bench 1",
        startsAt: Date.UTC(2040, 4, 11, 12),
        endsAt: Date.UTC(2040, 4, 11, 13),
        date: "2040-05-11",
        minuteOfDay: 480,
        zone: "America/New_York",
      },
    },
    owner: wish.contact,
    returnTo: wish.returnTo,
    serial: "SN-0042",
    goAheadMinor: 60_000,
    answers: wish.answers,
    postBy: "2040-05-07",
    settingsVersion: 1,
    linkGeneration: 1,
    history: [{ at: MONDAY, who: "owner", what: "booked" }],
  });
  expect(job?.plan.judgement.verdict).toBe("not-due");
  expect(job?.plan.quote).toMatchObject({ minor: 12_500, currency: "USD" });
});

it("is opened by its link and by no other", async () => {
  const ledger = await aLedger();
  const { number, linkHash } = await aBooking(ledger);
  expect((await ledger.jobByLink(linkHash))?.number).toBe(number);
  expect(await ledger.jobByLink("hash-of-something-else")).toBeNull();
});

it("refuses a hold that nobody made", async () => {
  const ledger = await aLedger();
  expect(await ledger.book(aBookingWish("no-such-hold"))).toEqual({ ok: false, refusal: { reason: "no-such-hold" } });
});

it("refuses a hold that is over, with fresh offers", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  await setClock(ledger, MONDAY + 15 * MINUTE);
  const answer = await ledger.book(aBookingWish(hold.id));
  expect(answer).toMatchObject({ ok: false, refusal: { reason: "hold-ended" } });
  // The held time is free again, so it is the first that is offered.
  expect(answer).toMatchObject({ refusal: { offers: [{ id: hold.offer }, {}, {}] } });
});

it("books a hold until its last millisecond", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  await setClock(ledger, MONDAY + 15 * MINUTE - 1);
  expect(await ledger.book(aBookingWish(hold.id))).toMatchObject({ ok: true });
});

it("uses a hold once, and invites nobody to book twice", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  await ledger.book(aBookingWish(hold.id));
  const refused = { ok: false, refusal: { reason: "already-booked" } };
  expect(await ledger.book(aBookingWish(hold.id))).toEqual(refused);
  await setClock(ledger, MONDAY + 15 * MINUTE);
  expect(await ledger.book(aBookingWish(hold.id))).toEqual(refused);
});

it("refuses work that does not fit into the hold, with offers that are long enough", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  const answer = await ledger.book(aBookingWish(hold.id, { answers: rebuildAnswers }));
  expect(answer).toMatchObject({ ok: false, refusal: { reason: "needs-more-time", verdict: "full-rebuild" } });
  if (answer.ok || answer.refusal.reason !== "needs-more-time") throw new Error("unreached");
  expect(answer.refusal.offers.length).toBeGreaterThan(0);
  for (const offer of answer.refusal.offers) expect(offer.end - offer.start).toBe(16);
  // The hold stays, so that the owner can still look at the answers again.
  expect(await ledger.book(aBookingWish(hold.id))).toMatchObject({ ok: true });
});

it("gives back the time that the work does not need", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger, "full-rebuild"), { verdict: "full-rebuild" });
  await ledger.hold(hold);
  expect(await takenQuanta(ledger)).toHaveLength(16);
  const wish = aBookingWish(hold.id);
  await ledger.book(wish);
  const taken = await takenQuanta(ledger);
  expect(taken).toHaveLength(4);
  expect(new Set(taken.map(({ claim }) => claim))).toEqual(new Set([hold.id]));
});

it("gives an urgent slot to nobody who only says that it is urgent", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger, "stop-riding"), { verdict: "stop-riding" });
  expect(await ledger.hold(hold)).toMatchObject({ value: { slot: { date: "2040-05-09" } } });
  const answer = await ledger.book(aBookingWish(hold.id, { answers: rebuildAnswers }));
  expect(answer).toMatchObject({ ok: false, refusal: { reason: "not-urgent", verdict: "full-rebuild" } });
  if (answer.ok || answer.refusal.reason !== "not-urgent") throw new Error("unreached");
  for (const { date } of answer.refusal.offers) expect(date >= "2040-05-11").toBe(true);
  expect(await ledger.book(aBookingWish(hold.id, { answers: urgentAnswers }))).toMatchObject({ ok: true });
});

it("offers the soonest time to a job that turns out urgent, whatever day was held", async () => {
  const ledger = await aLedger();
  const [, , late] = await ledger.offers({ verdict: "slip-check", from: "2040-06-04" });
  const hold = aHoldWish(late!.id);
  expect(await ledger.hold(hold)).toMatchObject({ ok: true });
  const answer = await ledger.book(aBookingWish(hold.id, { answers: urgentAnswers }));
  expect(answer).toMatchObject({
    refusal: { reason: "needs-more-time", verdict: "stop-riding", offers: [{ date: "2040-05-09" }, {}, {}] },
  });
});

it("judges the answers that come with a hold instead of the claim", async () => {
  const ledger = await aLedger();
  const wish = aHoldWish(await soonest(ledger), { verdict: "slip-check", answers: rebuildAnswers });
  expect(await ledger.hold(wish)).toMatchObject({ ok: true, value: { verdict: "full-rebuild" } });
  expect(await takenQuanta(ledger)).toHaveLength(16);
});

it("takes a hold away from nobody at midnight", async () => {
  const beforeMidnight = Date.UTC(2040, 4, 8, 3, 55);
  const ledger = await aLedger({ now: beforeMidnight });
  const hold = aHoldWish(await soonest(ledger));
  expect(await ledger.hold(hold)).toMatchObject({ value: { slot: { date: "2040-05-11" } } });
  await setClock(ledger, beforeMidnight + 10 * MINUTE);
  const booked = await ledger.book(aBookingWish(hold.id));
  if (!booked.ok) throw new Error(booked.refusal.reason);
  expect((await ledger.job(booked.value.jobNumber))?.postBy).toBe("2040-05-08");
});

it.each(["lastRebuild", "lastSlipSet"] as const)("refuses a %s after the shop's today", async (field) => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  const service = (date: string) =>
    someAnswers({ [field]: { when: "known", date, engineHours: 100, slipLeftAt: null } });
  const refused = await ledger.book(aBookingWish(hold.id, { answers: service("2040-05-08") }));
  const ahead = [{ field: `${field}.date`, latest: "2040-05-07" }];
  expect(refused).toEqual({ ok: false, refusal: { reason: "answers-ahead", ahead } });
  expect(await ledger.book(aBookingWish(hold.id, { answers: service("2040-05-07") }))).toMatchObject({ ok: true });
});

it("takes craft of next year, and of no later one", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  const refused = await ledger.book(aBookingWish(hold.id, { answers: someAnswers({ builtYear: 2042 }) }));
  const ahead = [{ field: "builtYear", latest: "2041" }];
  expect(refused).toEqual({ ok: false, refusal: { reason: "answers-ahead", ahead } });
  expect(await ledger.book(aBookingWish(hold.id, { answers: someAnswers({ builtYear: 2041 }) }))).toMatchObject({
    ok: true,
  });
});

it("reads today from the shop's zone, not from UTC", async () => {
  const lateEvening = Date.UTC(2040, 4, 8, 1);
  const ledger = await aLedger({ now: lateEvening });
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  const answers = someAnswers({
    lastRebuild: { when: "known", date: "2040-05-08", engineHours: 100, slipLeftAt: null },
  });
  expect(await ledger.book(aBookingWish(hold.id, { answers }))).toMatchObject({
    refusal: { reason: "answers-ahead" },
  });
});

it("keeps the version of the settings that judged the job, and the price that was shown", async () => {
  const ledger = await aLedger();
  const before = await aBooking(ledger);
  await changeSettings(ledger, (settings) => ({
    ...settings,
    prices: {
      ...settings.prices,
      byJob: { ...settings.prices.byJob, "slip-check": { "shim-stack": 1, "set-nut": 2, unknown: 3 } },
    },
  }));
  const after = await aBooking(ledger);
  expect(await ledger.job(before.number)).toMatchObject({ settingsVersion: 1, plan: { quote: { minor: 12_500 } } });
  expect(await ledger.job(after.number)).toMatchObject({ settingsVersion: 2, plan: { quote: { minor: 2 } } });
});

it("books at the price that was shown or not at all, and tells the new one", async () => {
  const ledger = await aLedger();
  const hold = aHoldWish(await soonest(ledger));
  await ledger.hold(hold);
  await changeSettings(ledger, (settings) => ({
    ...settings,
    prices: {
      ...settings.prices,
      byJob: { ...settings.prices.byJob, "slip-check": { "shim-stack": 1, "set-nut": 2, unknown: 3 } },
    },
  }));
  const wish = aBookingWish(hold.id, { priceMinor: 12_500 });
  const refused = await ledger.book(wish);
  expect(refused).toMatchObject({ refusal: { reason: "price-changed", quote: { minor: 2, currency: "USD" } } });
  expect(await ledger.book({ ...wish, priceMinor: 2 })).toMatchObject({ ok: true });
});

it("numbers jobs one after the other, each with a check symbol that is a digit or a letter", async () => {
  const ledger = await aLedger();
  const numbers = [];
  for (let count = 0; count < 12; count += 1) numbers.push((await aBooking(ledger)).number);
  // 1024 is "100" in base 32, and 1024 mod 37 = 25 = "S". 1031 to 1035 leave 32 to 36, so they are skipped.
  expect(numbers[0]).toBe("100S");
  expect(numbers[6]).toBe("106Z");
  expect(numbers[7]).toBe("10C0");
  expect(await ledger.job("106Z")).not.toBeNull();
});

it("holds nothing for a day that is over", async () => {
  const ledger = await aLedger();
  const offer = await soonest(ledger);
  await setClock(ledger, MONDAY + 10 * DAY);
  expect(await ledger.hold(aHoldWish(offer))).toMatchObject({
    ok: false,
    refusal: { reason: "slot-not-offered", why: "in-the-past" },
  });
});
