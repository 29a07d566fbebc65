import { runDurableObjectAlarm, runInDurableObject } from "cloudflare:test";
import { env } from "cloudflare:workers";
import { expect, it, vi } from "vitest";
import type { Outcome } from "#shared/basics/outcome.ts";
import { offerId } from "#shared/calendar/offer-id.ts";
import { quantumAt } from "#shared/calendar/quantum.ts";
import type { Hold, HoldRefusal } from "#shared/shop/booking.ts";
import { PURGE_EVERY_MS } from "#src/ledger/purge.ts";
import {
  aHoldWish,
  aLedger,
  aWishKey,
  changeSettings,
  countRows,
  DAY,
  type LedgerStub,
  MINUTE,
  MONDAY,
  setClock,
  someAnswers,
  soonest,
  takenQuanta,
} from "#tests/ledger/a-ledger.ts";

const refusalOf = (answer: Outcome<Hold, HoldRefusal>) => {
  if (answer.ok) throw new Error("It was held");
  return answer.refusal;
};

it("lets one of 500 owners who race for one slot win, and tells the others the nearest free ones", {
  timeout: 60_000,
}, async () => {
  const ledger = await aLedger();
  const offer = await soonest(ledger, "full-rebuild");
  const wishes = Array.from({ length: 500 }, () => aHoldWish(offer, { verdict: "full-rebuild" }));
  const answers = (await Promise.all(wishes.map((wish) => ledger.hold(wish)))) as Outcome<Hold, HoldRefusal>[];
  const winners = answers.filter((answer) => answer.ok);
  expect(winners).toHaveLength(1);
  expect(await takenQuanta(ledger)).toHaveLength(16);
  const won = winners[0]!.value.slot;
  for (const refusal of answers.filter((answer) => !answer.ok).map(refusalOf)) {
    if (refusal.reason !== "slot-not-offered") throw new Error(refusal.reason);
    expect(refusal.why).toBe("taken");
    expect(refusal.offers).toHaveLength(3);
    for (const { bench, startsAt, endsAt } of refusal.offers) {
      const isApart = Date.parse(endsAt) <= won.startsAt || Date.parse(startsAt) >= won.endsAt;
      expect(bench !== won.bench || isApart).toBe(true);
    }
    // The other bench is free at the very same time.
    expect(refusal.offers[0]).toMatchObject({ bench: "b2", startsAt: "2040-05-11T08:00:00-04:00" });
  }
});

it("offers an urgent job the soonest time, whatever day it asked for in vain", async () => {
  const ledger = await aLedger();
  const [far] = await ledger.offers({ verdict: "stop-riding", from: "2040-06-04" });
  await ledger.hold(aHoldWish(far!.id, { verdict: "stop-riding" }));
  const refused = await ledger.hold(aHoldWish(far!.id, { verdict: "stop-riding" }));
  expect(refused).toMatchObject({ refusal: { why: "taken", offers: [{ date: "2040-05-09" }, {}, {}] } });
});

it("refuses every start from which a job would reach into the held time", async () => {
  const ledger = await aLedger();
  const eight = quantumAt(Date.UTC(2040, 4, 11, 12));
  const at = (quanta: number) => aHoldWish(offerId("b1", (eight + quanta) as typeof eight));
  expect(await ledger.hold(at(8))).toMatchObject({ ok: true });
  for (const overlapping of [5, 6, 7, 8, 9, 10, 11])
    expect(await ledger.hold(at(overlapping))).toMatchObject({ refusal: { why: "taken" } });
  expect(await ledger.hold(at(4))).toMatchObject({ ok: true });
  expect(await ledger.hold(at(12))).toMatchObject({ ok: true });
});

it("refuses an overlap in the database itself", async () => {
  const ledger = await aLedger();
  await ledger.hold(aHoldWish(await soonest(ledger)));
  const [taken] = await takenQuanta(ledger);
  const insertAgain = runInDurableObject(ledger, (_, { storage }) => {
    const query = "INSERT INTO bench_time (bench, quantum, claim) VALUES (?, ?, 'another')";
    storage.sql.exec(query, taken!.bench, taken!.quantum);
  });
  await expect(insertAgain).rejects.toThrow(/UNIQUE constraint failed/);
});

it("frees held time when its minutes are over, for whoever asks next", async () => {
  const ledger = await aLedger();
  const offer = await soonest(ledger);
  await ledger.hold(aHoldWish(offer));
  await setClock(ledger, MONDAY + 15 * MINUTE - 1);
  expect(await ledger.hold(aHoldWish(offer))).toMatchObject({ ok: false });
  await setClock(ledger, MONDAY + 15 * MINUTE);
  expect(await soonest(ledger)).toBe(offer);
  expect(await ledger.hold(aHoldWish(offer))).toMatchObject({ ok: true });
});

it("frees held time by its alarm, if nobody asks", async () => {
  const ledger = await aLedger();
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await setClock(ledger, MONDAY + 15 * MINUTE);
  await runDurableObjectAlarm(ledger);
  expect(await takenQuanta(ledger)).toEqual([]);
});

it("wakes at the end of the hold that ends first", async () => {
  const ledger = await aLedger();
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await setClock(ledger, MONDAY + 5 * MINUTE);
  await runDurableObjectAlarm(ledger);
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await setClock(ledger, MONDAY + 6 * MINUTE);
  await runDurableObjectAlarm(ledger);
  expect(await alarmOf(ledger)).toBe(MONDAY + 15 * MINUTE);
});

it("counts a source's open holds, not the refused, ended or booked ones", async () => {
  const ledger = await aLedger();
  const source = "one-source";
  const first = aHoldWish(await soonest(ledger), { source });
  await ledger.hold(first);
  for (let count = 0; count < 9; count += 1) await ledger.hold(aHoldWish(first.offer, { source }));
  for (let count = 0; count < 4; count += 1)
    expect(await ledger.hold(aHoldWish(await soonest(ledger), { source }))).toMatchObject({ ok: true });
  const tooMany = await ledger.hold(aHoldWish(await soonest(ledger), { source }));
  expect(tooMany).toEqual({ ok: false, refusal: { reason: "too-many-holds", most: 5 } });
  expect(await ledger.hold(aHoldWish(await soonest(ledger)))).toMatchObject({ ok: true });
  await setClock(ledger, MONDAY + 15 * MINUTE);
  expect(await ledger.hold(aHoldWish(await soonest(ledger), { source }))).toMatchObject({ ok: true });
});

it("takes the cap from the settings, and from its surroundings where they set one", async () => {
  const ledger = await aLedger();
  await changeSettings(ledger, (settings) => ({
    ...settings,
    calendar: { ...settings.calendar, openHoldsPerSource: 1 },
  }));
  const source = "one-source";
  await ledger.hold(aHoldWish(await soonest(ledger), { source }));
  expect(await ledger.hold(aHoldWish(await soonest(ledger), { source }))).toMatchObject({ refusal: { most: 1 } });
  const restored = env.OPEN_HOLDS_PER_SOURCE;
  const surroundings = await runInDurableObject(ledger, (object) => object["env"]);
  try {
    Object.assign(surroundings, { OPEN_HOLDS_PER_SOURCE: "2" });
    expect(await ledger.hold(aHoldWish(await soonest(ledger), { source }))).toMatchObject({ ok: true });
    expect(await ledger.hold(aHoldWish(await soonest(ledger), { source }))).toMatchObject({ refusal: { most: 2 } });
  } finally {
    Object.assign(surroundings, { OPEN_HOLDS_PER_SOURCE: restored });
  }
});

it("asks a wish that met the cap anew, since it may succeed later", async () => {
  const ledger = await aLedger();
  const source = "one-source";
  for (let count = 0; count < 5; count += 1) await ledger.hold(aHoldWish(await soonest(ledger), { source }));
  const wish = aHoldWish(await soonest(ledger), { source });
  expect(await ledger.hold(wish)).toMatchObject({ refusal: { reason: "too-many-holds" } });
  await setClock(ledger, MONDAY + 15 * MINUTE);
  expect(await ledger.hold(wish)).toMatchObject({ ok: true });
});

it("lets a conversation have one hold: a new one gives up the earlier one", async () => {
  const ledger = await aLedger();
  const first = aHoldWish(await soonest(ledger), { draft: "d1" });
  await ledger.hold(first);
  // Reaches into the conversation's own earlier hold, which is no hindrance.
  const second = aHoldWish(first.offer, { draft: "d1", verdict: "full-rebuild" });
  expect(await ledger.hold(second)).toMatchObject({ ok: true });
  const taken = await takenQuanta(ledger);
  expect(taken).toHaveLength(16);
  expect(new Set(taken.map(({ claim }) => claim))).toEqual(new Set([second.id]));
});

it("keeps a conversation's hold where the new wish is refused", async () => {
  const ledger = await aLedger();
  const other = aHoldWish(await soonest(ledger));
  await ledger.hold(other);
  const mine = aHoldWish(await soonest(ledger), { draft: "d1" });
  await ledger.hold(mine);
  expect(await ledger.hold(aHoldWish(other.offer, { draft: "d1" }))).toMatchObject({ refusal: { why: "taken" } });
  expect((await takenQuanta(ledger)).filter(({ claim }) => claim === mine.id)).toHaveLength(4);
});

it("counts no hold of the same conversation against the cap", async () => {
  const ledger = await aLedger();
  const source = "one-source";
  for (let count = 0; count < 4; count += 1) await ledger.hold(aHoldWish(await soonest(ledger), { source }));
  for (let count = 0; count < 3; count += 1)
    expect(await ledger.hold(aHoldWish(await soonest(ledger), { source, draft: "d1" }))).toMatchObject({ ok: true });
  expect(await ledger.hold(aHoldWish(await soonest(ledger), { source }))).toMatchObject({ refusal: { most: 5 } });
});

it("answers the same wish with its first answer, and does it once", async () => {
  const ledger = await aLedger();
  const wish = aHoldWish(await soonest(ledger));
  const answers = await Promise.all([ledger.hold(wish), ledger.hold(wish), ledger.hold(wish)]);
  await setClock(ledger, MONDAY + 23 * 60 * MINUTE);
  answers.push(await ledger.hold(wish));
  for (const answer of answers) expect(answer).toEqual(answers[0]);
  expect(answers[0]).toMatchObject({ ok: true, value: { id: wish.id, until: MONDAY + 15 * MINUTE } });
  expect(await countRows(ledger, "hold")).toBe(1);
});

it("tries a refused wish anew, with the offers there are then", async () => {
  const ledger = await aLedger();
  const offer = await soonest(ledger);
  await ledger.hold(aHoldWish(offer));
  const late = aHoldWish(offer);
  const refusal = refusalOf((await ledger.hold(late)) as Outcome<Hold, HoldRefusal>);
  if (refusal.reason !== "slot-not-offered") throw new Error(refusal.reason);
  await ledger.hold(aHoldWish(refusal.offers[0]!.id));
  const again = refusalOf((await ledger.hold(late)) as Outcome<Hold, HoldRefusal>);
  if (again.reason !== "slot-not-offered") throw new Error(again.reason);
  expect(again.offers.map(({ id }) => id)).not.toContain(refusal.offers[0]!.id);
  await setClock(ledger, MONDAY + 15 * MINUTE);
  expect(await ledger.hold(late)).toMatchObject({ ok: true, value: { id: late.id } });
});

it("holds nothing by answers that speak of a time after today", async () => {
  const ledger = await aLedger();
  const lastSlipSet = { when: "known", date: "2040-05-08", engineHours: null, slipLeftAt: null } as const;
  const answers = someAnswers({ builtYear: 2042, lastSlipSet });
  const ahead = [
    { field: "builtYear", latest: "2041" },
    { field: "lastSlipSet.date", latest: "2040-05-07" },
  ];
  const refused = { ok: false, refusal: { reason: "answers-ahead", ahead } };
  expect(await ledger.hold(aHoldWish(await soonest(ledger), { answers }))).toEqual(refused);
  expect(await takenQuanta(ledger)).toEqual([]);
});

it("refuses a key that is used again for another wish", async () => {
  const ledger = await aLedger();
  const wishKey = aWishKey("hold");
  await ledger.hold(aHoldWish(await soonest(ledger), { wishKey }));
  const other = aHoldWish(await soonest(ledger), { wishKey: { ...wishKey, fingerprint: "f2" } });
  expect(await ledger.hold(other)).toEqual({ ok: false, refusal: { reason: "key-reused" } });
  // The keys of another caller are not ours.
  const elsewhere = { ...other, wishKey: { ...other.wishKey, scope: "another" } };
  expect(await ledger.hold(elsewhere)).toMatchObject({ ok: true });
});

it("forgets wishes and ended holds after a day, and not before", async () => {
  const ledger = await aLedger();
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await setClock(ledger, MONDAY + DAY - 1);
  await runDurableObjectAlarm(ledger);
  expect(await countRows(ledger, "wish")).toBe(1);
  await setClock(ledger, MONDAY + DAY + 15 * MINUTE + PURGE_EVERY_MS);
  await runDurableObjectAlarm(ledger);
  expect([await countRows(ledger, "wish"), await countRows(ledger, "hold")]).toEqual([0, 0]);
});

it("looks for what has ended at the full hours of a day, not at every alarm", async () => {
  const ledger = await aLedger();
  const passedAway = async () => {
    await runInDurableObject(ledger, (_, { storage: { sql } }) => {
      sql.exec("INSERT INTO used_link (nonce, expires_at) VALUES ('n1', 1)");
    });
    await runDurableObjectAlarm(ledger);
    return (await countRows(ledger, "used_link")) === 0;
  };
  await ledger.hold(aHoldWish(await soonest(ledger)));
  expect(await passedAway()).toBe(true);
  await setClock(ledger, MONDAY + MINUTE);
  expect(await passedAway()).toBe(false);
});

it.each([
  ["not-a-slot", "b1.000"],
  ["not-a-slot", "'; DROP TABLE hold; --"],
  ["no-such-bench", "b9.1"],
  ["in-the-past", "b1.1"],
  ["too-far-ahead", "b1.zzzzzz"],
])("says %s to the offer %s, with the soonest offers", async (why, offer) => {
  const ledger = await aLedger();
  const refusal = refusalOf((await ledger.hold(aHoldWish(offer))) as Outcome<Hold, HoldRefusal>);
  expect(refusal).toMatchObject({ reason: "slot-not-offered", why });
  expect(refusal).toMatchObject({ offers: [{ id: await soonest(ledger) }, {}, {}] });
});

it("never shows a half-done decision: where a write fails, nothing of it is there", async () => {
  const ledger = await aLedger();
  const wish = aHoldWish(await soonest(ledger));
  await runInDurableObject(ledger, (_, { storage }) => {
    storage.sql.exec("CREATE TRIGGER full BEFORE INSERT ON wish BEGIN SELECT RAISE(ABORT, 'the disk is full'); END");
  });
  vi.spyOn(console, "error").mockImplementation(() => {});
  await expect(runInDurableObject(ledger, (object) => object.hold(wish))).rejects.toThrow("the disk is full");
  expect(await takenQuanta(ledger)).toEqual([]);
  expect(await countRows(ledger, "hold")).toBe(0);
  await runInDurableObject(ledger, (_, { storage }) => storage.sql.exec("DROP TRIGGER full"));
  expect(await ledger.hold(wish)).toMatchObject({ ok: true });
});

const alarmOf = (ledger: LedgerStub) => runInDurableObject(ledger, (_, { storage }) => storage.getAlarm());

it("takes nothing from those who came in the same moment as one whose decision breaks", async () => {
  const ledger = await aLedger();
  const breaking = aHoldWish(await soonest(ledger));
  const other = aHoldWish(breaking.offer.replace("b1.", "b2."));
  await runInDurableObject(ledger, (_, { storage }) => {
    storage.sql.exec(
      `CREATE TRIGGER broken BEFORE INSERT ON wish WHEN new.key = '${breaking.wishKey.key}' BEGIN SELECT RAISE(ABORT, 'no'); END`,
    );
  });
  const [broken, kept] = await Promise.allSettled([ledger.hold(breaking), ledger.hold(other)]);
  expect(broken.status).toBe("rejected");
  expect(kept).toMatchObject({ status: "fulfilled", value: { ok: true } });
  expect(new Set((await takenQuanta(ledger)).map(({ claim }) => claim))).toEqual(new Set([other.id]));
  expect(await countRows(ledger, "hold")).toBe(1);
});
