import { evictDurableObject, runInDurableObject } from "cloudflare:test";
import { expect, it } from "vitest";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import { TABLES } from "#src/ledger/tables.ts";
import {
  aBooking,
  aLedger,
  DAY,
  type LedgerStub,
  MONDAY,
  setClock,
  soonest,
  takenQuanta,
} from "#tests/ledger/a-ledger.ts";

/** What settings had before there was a bench sheet. */
const { bench: _bench, clutch: _clutch, ...OLD_SETTINGS } = DEMO_SHOP;

/** Puts the ledger back to the tables of the first step, each with its rows as far as it had columns for them. */
const backToFirstStep = (ledger: LedgerStub) =>
  runInDurableObject(ledger, async (_, { storage }) => {
    const { sql } = storage;
    const names = [...TABLES.matchAll(/^CREATE TABLE (\w+)/gm)].map(([, name]) => name ?? "");
    const kept = names.map((name) => ({ name, rows: sql.exec(`SELECT * FROM "${name}"`).toArray() }));
    await storage.deleteAll();
    sql.exec("CREATE TABLE table_step (name TEXT PRIMARY KEY) STRICT");
    sql.exec(TABLES);
    sql.exec("INSERT INTO table_step (name) VALUES ('001-tables')");
    for (const { name, rows } of kept) {
      const columns = sql.exec<{ name: string }>(`SELECT name FROM pragma_table_info('${name}')`).toArray();
      const list = columns.map((column) => column.name);
      for (const row of rows) {
        const values = list.map((column) => row[column] as SqlStorageValue);
        sql.exec(`INSERT INTO "${name}" (${list}) VALUES (${list.map(() => "?")})`, ...values);
      }
    }
    sql.exec("UPDATE settings SET settings = ?", JSON.stringify(OLD_SETTINGS));
    sql.exec("INSERT INTO session (hash, expires_at) VALUES ('signed-in-before', ?)", MONDAY + 10 * DAY);
  });

/** The object wakes, as it does after a new version of the program was put in place. */
async function wakeUp(ledger: LedgerStub) {
  await evictDurableObject(ledger);
  await setClock(ledger, MONDAY);
}

async function anOldLedger() {
  const ledger = await aLedger();
  const booked = await aBooking(ledger);
  const cancelled = await aBooking(ledger);
  await ledger.cancelBooking({ booking: cancelled.booking, linkHash: cancelled.linkHash, by: "owner" });
  const [before, gone] = [await ledger.job(booked.number), await ledger.job(cancelled.number)];
  const taken = await takenQuanta(ledger);
  await backToFirstStep(ledger);
  await wakeUp(ledger);
  return { ledger, booked, cancelled, before, gone, taken };
}

it("reads the jobs of a ledger from before the bench sheet as they were", async () => {
  const { ledger, booked, cancelled, before, gone, taken } = await anOldLedger();
  expect(before).toMatchObject({ state: "booked", booking: { keepsTime: true } });
  expect(await ledger.job(booked.number)).toEqual(before);
  expect(await ledger.jobByLink(booked.linkHash)).toEqual(before);
  expect(gone).toMatchObject({ state: "cancelled", booking: { keepsTime: false } });
  expect(await ledger.job(cancelled.number)).toEqual(gone);
  expect(await takenQuanta(ledger)).toEqual(taken);
  expect((await ledger.daySheet()).map(({ number }) => number)).toEqual([booked.number]);
});

it("takes an old job on to the bench, and gives the time of a cancelled one to somebody else", async () => {
  const { ledger, booked, cancelled, gone } = await anOldLedger();
  const step = { number: booked.number, staff: "Nell", note: null };
  expect(await ledger.moveJob({ ...step, move: "receive", ifState: "booked" })).toMatchObject({ ok: true });
  expect(await ledger.moveJob({ ...step, move: "start", ifState: "received" })).toMatchObject({ ok: true });
  expect(await ledger.sheet(booked.number)).toMatchObject({ sheet: {}, lastService: null, rises: [] });
  expect(await ledger.jobParts(booked.number)).not.toHaveLength(0);
  const freed = await soonest(ledger);
  const next = await aBooking(ledger, { offer: freed });
  expect((await ledger.job(next.number))?.booking.time).toEqual(gone?.booking.time);
  expect(next.number).not.toBe(cancelled.number);
});

it("fills up settings that were saved before the bench had any, and signs everybody in anew", async () => {
  const { ledger } = await anOldLedger();
  expect(await ledger.settings()).toMatchObject({ version: 1, settings: DEMO_SHOP });
  expect(await ledger.session("signed-in-before")).toBeNull();
});

it("runs each step of the tables once, however often it wakes", async () => {
  const { ledger, booked, before } = await anOldLedger();
  await wakeUp(ledger);
  expect(await ledger.job(booked.number)).toEqual(before);
});
