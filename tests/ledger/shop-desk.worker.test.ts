import { evictDurableObject, runDurableObjectAlarm, runInDurableObject } from "cloudflare:test";
import { expect, it } from "vitest";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import { DROPPED_AT_ONCE, MOST_DRAFTS } from "#src/ledger/keep-answer.ts";
import { PURGE_EVERY_MS } from "#src/ledger/purge.ts";
import {
  aBooking,
  aHoldWish,
  aLedger,
  changeSettings,
  countRows,
  DAY,
  type LedgerStub,
  MINUTE,
  MONDAY,
  setClock,
  soonest,
  takenQuanta,
  urgentAnswers,
} from "#tests/ledger/a-ledger.ts";

it("starts from the demo shop's settings, as version 1", async () => {
  const ledger = await aLedger();
  expect(await ledger.settings()).toMatchObject({ version: 1, settings: DEMO_SHOP });
});

it("saves settings as a new version, unless somebody else saved meanwhile", async () => {
  const ledger = await aLedger();
  const settings = { ...DEMO_SHOP, front: { ...DEMO_SHOP.front, name: "North Shore Bench" } };
  const saved = await ledger.saveSettings({ ifVersion: 1, settings, staff: "Manager" });
  expect(saved).toEqual({ ok: true, value: { version: 2, savedAt: MONDAY, settings } });
  expect(await ledger.saveSettings({ ifVersion: 1, settings: DEMO_SHOP, staff: "Manager" })).toEqual({
    ok: false,
    refusal: { reason: "changed-meanwhile", version: 2 },
  });
  await evictDurableObject(ledger);
  expect(await ledger.settings()).toMatchObject({ version: 2, settings });
});

it("goes by new settings at once", async () => {
  const ledger = await aLedger();
  await changeSettings(ledger, (settings) => ({
    ...settings,
    calendar: { ...settings.calendar, closures: [{ from: "2040-05-08", to: "2040-05-13", why: "Regatta" }] },
  }));
  const [offer] = await ledger.offers({ verdict: "slip-check" });
  // Posted on Monday the 7th; the 14th is the first working day after it, the 17th the fourth.
  expect(offer).toMatchObject({ date: "2040-05-17", postBy: "2040-05-07" });
});

it("keeps a conversation for a fortnight after its last answer", async () => {
  const ledger = await aLedger();
  await ledger.keepAnswer({ tokenHash: "d1", question: "symptoms", answer: { noticed: ["whine"], notLooked: false } });
  await setClock(ledger, MONDAY + 10 * DAY);
  const kept = await ledger.keepAnswer({ tokenHash: "d1", question: "unitFamily", answer: "set-nut" });
  expect(kept).toEqual({
    ok: true,
    value: {
      draft: { symptoms: { noticed: ["whine"], notLooked: false }, unitFamily: "set-nut" },
      dropped: [],
      next: "builtYear",
      expiresAt: MONDAY + 24 * DAY,
    },
  });
  await setClock(ledger, MONDAY + 24 * DAY - 1);
  expect(await ledger.draft("d1")).toMatchObject({ draft: { unitFamily: "set-nut" }, hold: null });
  await setClock(ledger, MONDAY + 24 * DAY);
  expect(await ledger.draft("d1")).toBeNull();
  await setClock(ledger, MONDAY + 24 * DAY + 60 * MINUTE);
  await runDurableObjectAlarm(ledger);
  expect(await countRows(ledger, "draft")).toBe(0);
});

it("names the answers that no longer apply", async () => {
  const ledger = await aLedger();
  const answer = (question: "chargerModified" | "boost" | "symptoms", value: unknown) =>
    ledger.keepAnswer({ tokenHash: "d1", question, answer: value });
  await answer("symptoms", { noticed: [], notLooked: false });
  await answer("chargerModified", "yes");
  await answer("boost", { value: 18, unit: "psi" });
  expect(await answer("chargerModified", "no")).toMatchObject({ value: { dropped: ["boost"] } });
});

it("shows a conversation the time that it holds, as long as it holds it", async () => {
  const ledger = await aLedger();
  await ledger.keepAnswer({ tokenHash: "d1", question: "unitFamily", answer: "set-nut" });
  const wish = aHoldWish(await soonest(ledger), { draft: "d1" });
  await ledger.hold(wish);
  expect(await ledger.draft("d1")).toMatchObject({ hold: { id: wish.id, slot: { bench: "b1" } } });
  await setClock(ledger, MONDAY + 15 * MINUTE);
  expect(await ledger.draft("d1")).toMatchObject({ hold: null });
});

it("keeps the answers of a booked conversation for a day, so that the same form sent twice finds them", async () => {
  const ledger = await aLedger();
  await ledger.keepAnswer({ tokenHash: "d1", question: "unitFamily", answer: "set-nut" });
  await aBooking(ledger, { hold: { draft: "d1" }, booking: { draft: "d1" } });
  await ledger.keepAnswer({ tokenHash: "d2", question: "unitFamily", answer: "set-nut" });
  await aBooking(ledger, { hold: { draft: "d2" }, booking: { draft: "d2" } });
  await setClock(ledger, MONDAY + DAY);
  await runDurableObjectAlarm(ledger);
  expect(await ledger.draft("d1")).not.toBeNull();
  // This owner has begun to tell of another craft meanwhile.
  await ledger.keepAnswer({ tokenHash: "d2", question: "unitFamily", answer: "shim-stack" });
  await setClock(ledger, MONDAY + DAY + 15 * MINUTE + PURGE_EVERY_MS);
  await runDurableObjectAlarm(ledger);
  expect(await ledger.draft("d1")).toBeNull();
  expect(await ledger.draft("d2")).not.toBeNull();
});

it("forgets a conversation when it is told to, and begins anew where one cannot be read any more", async () => {
  const ledger = await aLedger();
  await ledger.keepAnswer({ tokenHash: "d1", question: "unitFamily", answer: "set-nut" });
  await ledger.keepAnswer({ tokenHash: "d2", question: "unitFamily", answer: "set-nut" });
  await ledger.forgetDraft("d1");
  expect(await ledger.draft("d1")).toBeNull();
  await runInDurableObject(ledger, (_, { storage }) => {
    storage.sql.exec("UPDATE draft SET draft = ?", JSON.stringify({ unitFamily: "of another time" }));
  });
  expect(await ledger.draft("d2")).toMatchObject({ draft: {} });
});

/** A flood of conversations, the earliest answered first, from a minute ago on. */
const flood = (ledger: LedgerStub, draft: object) =>
  runInDurableObject(ledger, (_, { storage: { sql } }) => {
    const query = `WITH RECURSIVE each (n) AS (SELECT 0 UNION ALL SELECT n + 1 FROM each WHERE n + 1 < ?)
      INSERT INTO draft (token_hash, draft, expires_at) SELECT 'flood-' || n, ?, ? + n FROM each`;
    const free = MOST_DRAFTS - Number(sql.exec("SELECT count(*) AS n FROM draft").one()["n"]);
    sql.exec(query, free, JSON.stringify(draft), MONDAY + 14 * DAY - MINUTE);
  });

it("drops the idlest conversations of one answer rather than turn an owner away", async () => {
  const ledger = await aLedger();
  const answer = (tokenHash: string, question: "unitFamily" | "symptoms", value: unknown) =>
    ledger.keepAnswer({ tokenHash, question, answer: value });
  await setClock(ledger, MONDAY - DAY);
  await answer("two answers", "unitFamily", "set-nut");
  await answer("two answers", "symptoms", { noticed: [], notLooked: false });
  await answer("holds time", "unitFamily", "set-nut");
  await answer("idle", "unitFamily", "set-nut");
  await setClock(ledger, MONDAY);
  await ledger.hold(aHoldWish(await soonest(ledger), { draft: "holds time" }));
  await flood(ledger, { unitFamily: "set-nut" });
  expect(await answer("new", "unitFamily", "set-nut")).toMatchObject({ ok: true });
  expect(await countRows(ledger, "draft")).toBe(MOST_DRAFTS - DROPPED_AT_ONCE + 1);
  const kept = async (tokenHash: string) => (await ledger.draft(tokenHash)) !== null;
  expect(await Promise.all(["new", "two answers", "holds time"].map(kept))).toEqual([true, true, true]);
  expect(await Promise.all(["idle", "flood-0", "flood-98", "flood-99"].map(kept))).toEqual([false, false, false, true]);
});

it("drops the idlest conversations of all where each has several answers", async () => {
  const ledger = await aLedger();
  await flood(ledger, { unitFamily: "set-nut", builtYear: 2020 });
  const kept = await ledger.keepAnswer({ tokenHash: "new", question: "unitFamily", answer: "set-nut" });
  expect(kept).toMatchObject({ ok: true });
  expect(await ledger.draft("flood-99")).toBeNull();
  expect(await ledger.draft("flood-100")).not.toBeNull();
});

it("lets go of the time that a conversation holds when it is told to forget it", async () => {
  const ledger = await aLedger();
  await ledger.keepAnswer({ tokenHash: "d1", question: "unitFamily", answer: "set-nut" });
  await ledger.hold(aHoldWish(await soonest(ledger, "slip-check"), { draft: "d1" }));
  expect(await takenQuanta(ledger)).toHaveLength(4);
  await ledger.forgetDraft("d1");
  expect(await takenQuanta(ledger)).toEqual([]);
});

it("opens one session with a sign-in link, once, and only while it is good", async () => {
  const ledger = await aLedger();
  const wish = { nonce: "n1", nonceExpires: MONDAY + 10 * MINUTE, sessionHash: "s1", source: "a" };
  expect(await ledger.openSession(wish)).toEqual({ ok: true, value: { expiresAt: MONDAY + 14 * DAY } });
  expect(await ledger.openSession({ ...wish, sessionHash: "s2" })).toEqual({
    ok: false,
    refusal: { reason: "link-used" },
  });
  expect(await ledger.session("s2")).toBeNull();
  // Its nonce may be forgotten only when the link itself is over.
  await setClock(ledger, MONDAY + 10 * MINUTE - 1);
  await runDurableObjectAlarm(ledger);
  expect(await ledger.openSession(wish)).toMatchObject({ refusal: { reason: "link-used" } });
  await setClock(ledger, MONDAY + 10 * MINUTE);
  expect(await ledger.openSession({ ...wish, nonce: "n2" })).toEqual({
    ok: false,
    refusal: { reason: "link-expired" },
  });
});

it("ends a session when it is closed, after an idle night, or after a fortnight", async () => {
  const ledger = await aLedger();
  const open = (name: string) =>
    ledger.openSession({ nonce: name, nonceExpires: MONDAY + MINUTE, sessionHash: `hash-${name}`, source: "a" });
  await open("a");
  await open("b");
  await ledger.closeSession("hash-a");
  expect(await ledger.session("hash-a")).toBeNull();
  await open("c");
  const staff = { id: 1, name: "Manager", role: "manager" };
  for (let at = MONDAY; at < MONDAY + 14 * DAY; at += 12 * 60 * MINUTE - 1) {
    await setClock(ledger, at);
    expect(await ledger.session("hash-b")).toEqual({ expiresAt: MONDAY + 14 * DAY, staff });
  }
  expect(await ledger.session("hash-c")).toBeNull();
  await setClock(ledger, MONDAY + 14 * DAY);
  expect(await ledger.session("hash-b")).toBeNull();
  await setClock(ledger, MONDAY + 14 * DAY + 60 * MINUTE);
  await runDurableObjectAlarm(ledger);
  expect([await countRows(ledger, "session"), await countRows(ledger, "used_link")]).toEqual([0, 0]);
});

it("lists what comes: urgent first, then by slot, cancelled last, and nothing that was long ago", async () => {
  const ledger = await aLedger();
  const cancelled = await aBooking(ledger);
  const early = await aBooking(ledger);
  const late = await aBooking(ledger, { offer: (await ledger.offers({ verdict: "slip-check" }))[2]!.id });
  const urgent = await aBooking(ledger, {
    offer: (await ledger.offers({ verdict: "stop-riding" }))[2]!.id,
    hold: { verdict: "stop-riding" },
    booking: { answers: urgentAnswers },
  });
  await ledger.cancelBooking({ booking: cancelled.booking, linkHash: "", by: "shop" });
  const listed = async () => (await ledger.arrivals()).map(({ number }) => number);
  expect(await listed()).toEqual([urgent, early, late, cancelled].map(({ number }) => number));
  expect(await ledger.arrivals()).toMatchObject([
    { verdict: "stop-riding", ownerName: "Ada Quill", state: "booked" },
    {},
    {},
    { state: "cancelled" },
  ]);
  await setClock(ledger, Date.UTC(2040, 4, 11, 13) + 14 * DAY);
  expect(await listed()).not.toContain(early.number);
});

it("notes once that a zone's law has moved a booking, and moves nothing in silence", async () => {
  const ledger = await aLedger();
  const [moved, still] = [await aBooking(ledger), await aBooking(ledger)];
  const before = await ledger.job(moved.number);
  // As if the booking had been promised under another law, which this runtime does not know any more.
  await runInDurableObject(ledger, (_, { storage: { sql } }) => {
    sql.exec("UPDATE booking SET minute_of_day = minute_of_day - 60 WHERE id = ?", moved.booking);
    sql.exec("UPDATE zone_law SET offsets = 'another law'");
  });
  for (let starts = 0; starts < 2; starts += 1) {
    await evictDurableObject(ledger);
    const job = await ledger.job(moved.number);
    expect(job?.history.map(({ what }) => what)).toEqual(["booked", "zone-law-moved"]);
    expect(job?.booking.time).toEqual({ ...before?.booking.time, minuteOfDay: 420 });
  }
  expect((await ledger.job(still.number))?.history).toHaveLength(1);
});

it("keeps owner, craft, unit and job apart, and the unit's services with the unit", async () => {
  const ledger = await aLedger();
  await aBooking(ledger);
  const rows = await runInDurableObject(ledger, (_, { storage: { sql } }) => ({
    fitted: sql.exec("SELECT id, craft, fitted_at FROM unit").toArray(),
    service: sql.exec("SELECT unit, kind, told_by, date, engine_hours FROM service").toArray(),
    job: sql.exec("SELECT owner, craft, unit FROM job").toArray(),
    consent: sql.exec("SELECT reminder_text, reminder_agreed_at FROM owner").toArray(),
  }));
  expect(rows).toEqual({
    fitted: [{ id: 1, craft: 1, fitted_at: MONDAY }],
    service: [{ unit: 1, kind: "rebuild", told_by: "owner", date: "2040-04-01", engine_hours: 100 }],
    job: [{ owner: 1, craft: 1, unit: 1 }],
    consent: [{ reminder_text: "Tell me by text when the next service is due.", reminder_agreed_at: MONDAY }],
  });
});
