import { runDurableObjectAlarm } from "cloudflare:test";
import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, expect, it } from "vitest";
import { BookingAnswer, ChangeAnswer } from "#src/api/booking-bodies.ts";
import { ProblemAnswer } from "#src/api/problem-body.ts";
import { ReceiptAnswer } from "#src/api/receipt-body.ts";
import { nothingKnown, someAnswers, someOwner } from "#tests/api/an-owner.ts";
import { type Ask, ask, fieldsOf, jsonOf, MONDAY, problemOf, setClock, WARM_UP } from "#tests/api/ask.ts";

beforeAll(...WARM_UP);
beforeEach(() => void setClock(MONDAY));

const DAY_MS = 86_400_000;
let keys = 0;

async function offered(verdict = "slip-check"): Promise<string> {
  const refused = await problemOf(
    ask("/api/holds", { body: { slot: "b1.1", verdict }, key: `offers-${++keys}`, from: "192.0.2.250" }),
    409,
  );
  return refused.offers[0].id;
}

async function held(verdict = "slip-check"): Promise<string> {
  const body = { slot: await offered(verdict), verdict };
  const from = `198.51.100.${++keys}`;
  return (await jsonOf(ask("/api/holds", { body, key: "hold", from }), 201)).hold;
}

const wish = async (change: object = {}) => ({ hold: await held(), answers: someAnswers(), ...someOwner(), ...change });
const book = (body: object, more: Ask = {}) => ask("/api/bookings", { body, key: `book-${++keys}`, ...more });
const booked = async (change: object = {}) => BookingAnswer.parse(await jsonOf(book(await wish(change)), 201));

const path = (booking: string) => `/api/bookings/${booking}`;
const move = (booking: string, slot: string, token?: string) =>
  ask(path(booking), { method: "PATCH", body: { slot }, ...(token === undefined ? {} : { token }) });
const cancel = (booking: string, token?: string) =>
  ask(path(booking), { method: "DELETE", ...(token === undefined ? {} : { token }) });

it("goes from a hold to a booking, moves it and cancels it", async () => {
  const { booking, jobNumber, tagUrl, ownerToken } = await booked({
    serial: "SN 0042",
    goAheadMinor: 20_000,
    reminders: { consent: true, text: "Text me when the slip is due." },
  });
  expect(jobNumber).toMatch(/^[0-9A-HJKMNP-TV-Z]+$/);
  expect(tagUrl).toBe(`http://shop.example/tag/${ownerToken}`);
  expect(ownerToken).toMatch(/^[\w-]{22}$/);

  const slot = await offered();
  const moved = ChangeAnswer.parse(await jsonOf(move(booking, slot, ownerToken), 200));
  expect(moved).toMatchObject({ booking, state: "booked", sequence: 1, zone: "America/New_York" });
  expect(ChangeAnswer.parse(await jsonOf(move(booking, slot, ownerToken), 200))).toEqual(moved);

  const cancelled = ChangeAnswer.parse(await jsonOf(cancel(booking, ownerToken), 200));
  expect(cancelled).toMatchObject({ booking, state: "cancelled", sequence: 2 });
  expect(await jsonOf(cancel(booking, ownerToken), 200)).toEqual(cancelled);
  const keyed = { method: "DELETE", token: ownerToken, key: "of its own" };
  expect(await jsonOf(ask(path(booking), keyed), 200)).toEqual(cancelled);
  expect((await problemOf(move(booking, slot, ownerToken), 409)).reason).toBe("already-cancelled");
  const again = { body: { slot, verdict: "slip-check" }, key: "freed", from: "198.51.100.200" };
  await jsonOf(ask("/api/holds", again), 201);
});

it("books one of each request, however often it is sent", async () => {
  const body = await wish();
  const first = await jsonOf(book(body, { key: "twice" }), 201);
  expect(await jsonOf(book(body, { key: "twice" }), 201)).toEqual(first);
  expect(await jsonOf(book(body, { key: "twice", from: "203.0.113.7" }), 201)).toEqual(first);
  const other = { ...body, contact: { name: "Wren Calloway", email: "other@shore.example" } };
  expect((await problemOf(book(other, { key: "twice" }), 422)).reason).toBe("key-reused");
  const again = await problemOf(book(body), 409);
  expect([again.reason, again.offers]).toEqual(["already-booked", undefined]);
  expect((await problemOf(ask("/api/bookings", { body }), 400)).reason).toBe("idempotency-key-needed");
});

it("judges the answers again, and offers more time where they need it", async () => {
  const refused = ProblemAnswer.parse(await problemOf(book(await wish({ answers: nothingKnown() })), 409));
  expect(refused).toMatchObject({ reason: "needs-more-time", verdict: "full-rebuild" });
  expect(refused.offers).toHaveLength(3);
});

it("does not let a job that is not urgent have an urgent one's time", async () => {
  const refused = ProblemAnswer.parse(await problemOf(book(await wish({ hold: await held("stop-riding") })), 409));
  expect(refused).toMatchObject({ reason: "not-urgent", verdict: "not-due" });
  expect(refused.offers).toHaveLength(3);
});

it("offers other time where the hold has ended, and says so where there was none", async () => {
  const late = await wish();
  setClock(MONDAY + 16 * 60_000);
  const ended = ProblemAnswer.parse(await problemOf(book(late), 409));
  expect(ended.reason).toBe("hold-ended");
  expect(ended.offers).toHaveLength(3);
  expect((await problemOf(book({ ...late, hold: "no-such-hold" }), 409)).reason).toBe("no-such-hold");
});

it("books at the price that was shown, or tells the present one", async () => {
  const body = await wish({ priceMinor: 1 });
  const refused = ProblemAnswer.parse(await problemOf(book(body), 409));
  expect(refused).toMatchObject({ reason: "price-changed", priceMinor: 12_500, currency: "USD" });
  await jsonOf(book({ ...body, priceMinor: 12_500 }), 201);
});

it("opens a booking only to the token that belongs to it", async () => {
  const mine = await booked();
  const other = await booked();
  const missing = await cancel(mine.booking);
  expect(missing.headers.get("www-authenticate")).toBe("Bearer");
  await problemOf(missing, 401);
  await problemOf(move(mine.booking, await offered()), 401);
  await problemOf(ask(path(mine.booking), { method: "DELETE", headers: { authorization: "Basic eDp5" } }), 401);
  const wrong = await problemOf(cancel(mine.booking, other.ownerToken), 404);
  expect(await problemOf(cancel("no-such-booking", mine.ownerToken), 404)).toEqual(wrong);
  expect(await problemOf(cancel(mine.booking, "guessed"), 404)).toEqual(wrong);
  expect(await problemOf(move(mine.booking, await offered(), other.ownerToken), 404)).toEqual(wrong);
  await jsonOf(cancel(mine.booking, mine.ownerToken), 200);
});

it("refuses to move to time that is taken, with fresh offers, and to no time at all", async () => {
  const mine = await booked();
  const taken = await offered();
  await jsonOf(ask("/api/holds", { body: { slot: taken, verdict: "slip-check" }, key: "takes-it" }), 201);
  const refused = ProblemAnswer.parse(await problemOf(move(mine.booking, taken, mine.ownerToken), 409));
  expect(refused).toMatchObject({ reason: "slot-not-offered", why: "taken" });
  expect(refused.offers).toHaveLength(3);
  expect(await fieldsOf(move(mine.booking, "some time", mine.ownerToken))).toEqual(["slot"]);
});

it("changes nothing on the last working day before the slot", async () => {
  const mine = await booked();
  setClock(MONDAY + 3.9 * DAY_MS);
  const refused = ProblemAnswer.parse(await problemOf(cancel(mine.booking, mine.ownerToken), 409));
  expect(refused.reason).toBe("too-late");
  expect(Date.parse(refused.until ?? "")).toBeLessThan(MONDAY + 3.9 * DAY_MS);
});

it("gives a receipt that says nothing about a person, first by the shop, then as published", async () => {
  const { booking } = await booked();
  const fresh = ReceiptAnswer.parse(await jsonOf(ask(path(booking)), 200));
  expect(fresh).toMatchObject({ booking, state: "booked", sequence: 0 });
  expect(await env.BOARD.get(`receipt:${booking}`)).toBeNull();
  setClock(MONDAY + 5000);
  await runDurableObjectAlarm(env.SHOP.getByName("main"));
  expect(await env.BOARD.get(`receipt:${booking}`)).not.toMatch(/Wren|555|shore|Heron/);
  expect(ReceiptAnswer.parse(await jsonOf(ask(path(booking)), 200))).toEqual(fresh);
  await problemOf(ask(path("no-such-booking")), 404);
});

it("reads a phone number as dialled in the shop's country, and refuses what is none", async () => {
  const contact = { name: "Wren Calloway", phone: "call me" };
  const { errors } = await problemOf(book(await wish({ contact })), 422);
  expect(errors).toEqual([
    { field: "contact.phone", accepted: "a phone number, with + and the country code unless it is in US" },
  ]);
  const { jobNumber } = await booked({ contact: { name: "Wren Calloway", phone: "202 555 0143" } });
  const job = await env.SHOP.getByName("main").job(jobNumber);
  expect(job?.owner).toEqual({ name: "Wren Calloway", phone: "+12025550143" });
});

it.each([
  [{ contact: { name: "Wren" } }, ["contact.phone"]],
  [{ contact: { email: "wren@shore.example" } }, ["contact.name"]],
  [{ contact: { name: "Wren\u0007", email: "wren" } }, ["contact.name", "contact.email"]],
  [{ returnTo: { lines: ["7 Heron Quay"], postcode: "1", region: "Ottersby" } }, ["returnTo.country"]],
  [{ returnTo: { lines: ["7 Heron Quay"], postcode: "1" } }, ["returnTo.region", "returnTo.country"]],
  [{ returnTo: { collect: false } }, ["returnTo.collect"]],
  [{ reminders: { consent: false, text: "Yes" } }, ["reminders.consent"]],
  [{ goAheadMinor: 1.5, serial: "x".repeat(41) }, ["serial", "goAheadMinor"]],
  [
    { answers: someAnswers({ lastSlipSet: { when: "known", date: null, engineHours: 51 } }) },
    ["answers.lastSlipSet.engineHours"],
  ],
  [
    { answers: someAnswers({ lastSlipSet: { when: "known", date: "2027-03-02", engineHours: 50 } }) },
    ["answers.lastSlipSet.date"],
  ],
  [{ answers: someAnswers({ builtYear: 2029 }) }, ["answers.builtYear"]],
  [
    {
      contact: { phone: "call me" },
      answers: someAnswers({
        builtYear: 2029,
        engineHours: 10,
        riding: 1,
        lastSlipSet: { when: "known", date: "2027-03-02", engineHours: null },
      }),
    },
    [
      "answers.riding",
      "answers.lastRebuild.engineHours",
      "contact.name",
      "answers.builtYear",
      "answers.lastSlipSet.date",
      "contact.phone",
    ],
  ],
  [{ contact: {} }, ["contact.name", "contact.phone"]],
  [{ price: 1, contact: { name: "Wren", email: "wren@shore.example", fax: "1" } }, ["contact.fax", "price"]],
])("refuses %j and names the field", async (change, fields) => {
  expect(await fieldsOf(book(await wish(change)))).toEqual(fields);
});

it("takes a unit that is collected, and answers that carry a date of their own", async () => {
  await booked({ returnTo: { collect: true }, answers: someAnswers({ onDate: "2020-01-01" }) });
});
