import { beforeAll, beforeEach, expect, it } from "vitest";
import { HoldAnswer } from "#src/api/hold-bodies.ts";
import { ProblemAnswer } from "#src/api/problem-body.ts";
import { nothingKnown, someAnswers } from "#tests/api/an-owner.ts";
import { type Ask, ask, fieldsOf, type Json, jsonOf, MONDAY, problemOf, setClock, WARM_UP } from "#tests/api/ask.ts";

beforeAll(...WARM_UP);
beforeEach(() => void setClock(MONDAY));

let keys = 0;
const hold = (body: object, more: Ask = {}) => ask("/api/holds", { body, key: `hold-${++keys}`, ...more });

async function offersOf(verdict: string): Promise<Json> {
  return (await jsonOf(ask(`/api/slots?verdict=${verdict}`), 200)).offers;
}

/** Takes what is offered first, as the shop itself has it: the board in between may be a little old. */
async function freeSlot(verdict = "slip-check"): Promise<string> {
  const refused = await problemOf(hold({ slot: "b1.1", verdict }, { from: "192.0.2.250" }), 409);
  return refused.offers[0].id;
}

it("keeps bench time for a quarter of an hour", async () => {
  const slot = await freeSlot();
  const held = HoldAnswer.parse(await jsonOf(hold({ slot, verdict: "slip-check" }), 201));
  expect(held).toMatchObject({ until: "2027-03-01T15:15:00.000Z", slot: { zone: "America/New_York" } });
  expect(held.hold).toMatch(/^[\w-]{22}$/);
});

it("gives one bench time to one caller, and the other fresh offers", async () => {
  const [{ id: slot }] = await offersOf("full-rebuild");
  await jsonOf(hold({ slot, verdict: "full-rebuild" }), 201);
  const refused = ProblemAnswer.parse(await problemOf(hold({ slot, verdict: "full-rebuild" }), 409));
  expect(refused).toMatchObject({ reason: "slot-not-offered", why: "taken" });
  expect(refused.offers).toHaveLength(3);
  expect(refused.offers?.map(({ id }) => id)).not.toContain(slot);
});

it("judges the answers that come along, whatever verdict is said", async () => {
  const slot = await freeSlot();
  const body = { slot, verdict: "slip-check", answers: nothingKnown({ onDate: "2020-01-01" }) };
  const { slot: time } = await jsonOf(hold(body, { from: "192.0.2.2" }), 201);
  expect(Date.parse(time.endsAt) - Date.parse(time.startsAt)).toBe(240 * 60_000);
});

it("does not take urgency from the caller where the answers say otherwise", async () => {
  const [{ id: slot }] = await offersOf("stop-riding");
  const refused = await problemOf(hold({ slot, verdict: "stop-riding", answers: someAnswers() }), 409);
  expect(refused).toMatchObject({ reason: "slot-not-offered", why: "before-arrival" });
});

it("answers the same request the same way again", async () => {
  const body = { slot: await freeSlot(), verdict: "slip-check" };
  const first = await jsonOf(hold(body, { key: '"same"', from: "192.0.2.3" }), 201);
  expect(await jsonOf(hold(body, { key: '"same"', from: "192.0.2.3" }), 201)).toEqual(first);
  expect(await jsonOf(hold(body, { key: "same", from: "192.0.2.3" }), 201)).toEqual(first);
});

it("refuses a key that has named another request, of the same caller only", async () => {
  const slot = await freeSlot();
  await jsonOf(hold({ slot, verdict: "slip-check" }, { key: "reused", from: "192.0.2.4" }), 201);
  const other = { slot: await freeSlot(), verdict: "slip-check" };
  const refused = await problemOf(hold(other, { key: "reused", from: "192.0.2.4" }), 422);
  expect(refused.reason).toBe("key-reused");
  await jsonOf(hold(other, { key: "reused", from: "192.0.2.5" }), 201);
});

it("caps the open holds of one source; refused ones do not count", async () => {
  const from = "192.0.2.6";
  await problemOf(hold({ slot: "b1.1", verdict: "slip-check" }, { from }), 409);
  for (let held = 0; held < 5; held += 1) {
    await jsonOf(hold({ slot: await freeSlot(), verdict: "slip-check" }, { from }), 201);
  }
  const slot = await freeSlot();
  const refused = await problemOf(hold({ slot, verdict: "slip-check" }, { from }), 429);
  expect(refused.reason).toBe("too-many-holds");
  await jsonOf(hold({ slot, verdict: "slip-check" }, { from: "192.0.2.7" }), 201);
});

it("refuses answers that speak of a time after today, and names each", async () => {
  const answers = someAnswers({ builtYear: 2029, lastSlipSet: { when: "known", date: "2027-03-02", engineHours: 50 } });
  const refused = await problemOf(hold({ slot: await freeSlot(), verdict: "slip-check", answers }), 422);
  expect(refused.errors).toEqual([
    { field: "answers.builtYear", accepted: "2028 or earlier" },
    { field: "answers.lastSlipSet.date", accepted: "2027-03-01 or earlier" },
  ]);
});

it("names what is wrong with a wish", async () => {
  expect(await fieldsOf(hold({}))).toEqual(["slot", "verdict"]);
  expect(await fieldsOf(hold({ slot: "somewhere", verdict: "slip-check" }))).toEqual(["slot"]);
  expect(await fieldsOf(hold({ slot: "b1.1", verdict: "urgent", name: "Wren" }))).toEqual(["verdict", "name"]);
  const answers = someAnswers({ engineHours: 10, colour: "red" });
  expect(await fieldsOf(hold({ slot: "b1.1", verdict: "slip-check", answers }))).toContain("answers.colour");
  const refused = await problemOf(ask("/api/holds", { body: { slot: "b1.1", verdict: "slip-check" } }), 400);
  expect(refused.reason).toBe("idempotency-key-needed");
});
