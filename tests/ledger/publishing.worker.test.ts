import { evictDurableObject, runDurableObjectAlarm, runInDurableObject } from "cloudflare:test";
import { env } from "cloudflare:workers";
import { expect, it, vi } from "vitest";
import { busyOf, SlotBoardSchema } from "#shared/calendar/board-schema.ts";
import { findOffers } from "#shared/calendar/find-offers.ts";
import {
  aBooking,
  aBookingWish,
  aHoldWish,
  aLedger,
  changeSettings,
  countRows,
  type LedgerStub,
  MINUTE,
  MONDAY,
  setClock,
  soonest,
  storedText,
} from "#tests/ledger/a-ledger.ts";

const SECOND = 1000;
const read = async (key: string) => JSON.parse((await env.BOARD.get(key)) ?? "null");
const readBoard = async (ledger: LedgerStub) => read(`board:${ledger.name}`);
const alarmOf = (ledger: LedgerStub) => runInDurableObject(ledger, (_, { storage }) => storage.getAlarm());

async function publishAt(ledger: LedgerStub, now: number) {
  await setClock(ledger, now);
  await runDurableObjectAlarm(ledger);
}

it("publishes the board a second after a change, with the version of the rows", async () => {
  const ledger = await aLedger();
  await ledger.hold(aHoldWish(await soonest(ledger)));
  expect(await alarmOf(ledger)).toBe(MONDAY + SECOND);
  expect(await readBoard(ledger)).toBeNull();
  await publishAt(ledger, MONDAY + SECOND);
  const published = SlotBoardSchema.parse(await readBoard(ledger));
  expect(published).toEqual(await ledger.board());
  expect(published.version).toBe(1);
  expect(busyOf(published).filter(({ bench }) => bench === "b1")[0]).toEqual({
    bench: "b1",
    from: Date.UTC(2040, 4, 11, 12) / (15 * MINUTE),
    to: Date.UTC(2040, 4, 11, 13) / (15 * MINUTE),
  });
  const { metadata } = await env.BOARD.getWithMetadata(`board:${ledger.name}`);
  expect(metadata).toEqual({ version: 1 });
});

it("raises the version with every change of bench time or settings, and with nothing else", async () => {
  const ledger = await aLedger();
  const versions = [(await ledger.board()).version];
  const note = async () => versions.push((await ledger.board()).version);
  const made = await aBooking(ledger);
  await note();
  await ledger.moveBooking({ booking: made.booking, linkHash: "", by: "shop", offer: await soonest(ledger) });
  await note();
  await ledger.cancelBooking({ booking: made.booking, linkHash: "", by: "shop" });
  await note();
  await changeSettings(ledger, (settings) => settings);
  await note();
  await ledger.keepAnswer({ tokenHash: "d1", question: "unitFamily", answer: "set-nut" });
  await ledger.openSession({ nonce: "n", nonceExpires: MONDAY + 1, sessionHash: "s", source: "a" });
  await note();
  expect(versions).toEqual([0, 1, 2, 3, 4, 4]);
});

it("turns a rush of changes into one writing", async () => {
  const ledger = await aLedger();
  const put = vi.fn(async () => {});
  await runInDurableObject(ledger, (object) => {
    object.boardStore = { put };
  });
  for (let count = 0; count < 8; count += 1) await ledger.hold(aHoldWish(await soonest(ledger)));
  await publishAt(ledger, MONDAY + SECOND);
  expect(put.mock.calls).toMatchObject([[`board:${ledger.name}`, { version: 8 }]]);
  await publishAt(ledger, MONDAY + 2 * SECOND);
  expect(put).toHaveBeenCalledTimes(1);
});

it("publishes a receipt of each booking, and again when it changes", async () => {
  const ledger = await aLedger();
  const made = await aBooking(ledger);
  await publishAt(ledger, MONDAY + SECOND);
  expect(await read(`receipt:${made.booking}`)).toEqual({
    booking: made.booking,
    state: "booked",
    startsAt: Date.UTC(2040, 4, 11, 12),
    endsAt: Date.UTC(2040, 4, 11, 13),
    bench: "b1",
    version: 0,
  });
  await ledger.cancelBooking({ booking: made.booking, linkHash: made.linkHash, by: "owner" });
  await publishAt(ledger, MONDAY + 2 * SECOND);
  expect(await read(`receipt:${made.booking}`)).toMatchObject({ state: "cancelled", version: 1 });
  expect(await ledger.receipt(made.booking)).toEqual(await read(`receipt:${made.booking}`));
  expect(await ledger.receipt("nobody's")).toBeNull();
});

it("tries again after a failure, later each time, and loses nothing", async () => {
  const ledger = await aLedger();
  const told = vi.spyOn(console, "log").mockImplementation(() => {});
  let isDown = true;
  const put = vi.fn(async () => {
    if (isDown) throw new Error("503 from the store");
  });
  await runInDurableObject(ledger, (object) => {
    object.boardStore = { put };
  });
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await publishAt(ledger, MONDAY + SECOND);
  expect(await alarmOf(ledger)).toBe(MONDAY + 3 * SECOND);
  await publishAt(ledger, MONDAY + 3 * SECOND);
  expect(await alarmOf(ledger)).toBe(MONDAY + 7 * SECOND);
  expect(told).toHaveBeenCalledTimes(2);
  isDown = false;
  await publishAt(ledger, MONDAY + 7 * SECOND);
  expect(put).toHaveBeenCalledTimes(3);
  expect(await countRows(ledger, "publication")).toBe(0);
  // What is left is the end of the hold.
  expect(await alarmOf(ledger)).toBe(MONDAY + 15 * MINUTE);
});

it("publishes the receipts although the board fails", async () => {
  const ledger = await aLedger();
  vi.spyOn(console, "log").mockImplementation(() => {});
  const written: string[] = [];
  await runInDurableObject(ledger, (object) => {
    object.boardStore = {
      put: async (key) => {
        if (key.startsWith("board:")) throw new Error("the store bears no more");
        written.push(key);
      },
    };
  });
  const made = await aBooking(ledger);
  await publishAt(ledger, MONDAY + SECOND);
  expect(written).toEqual([`receipt:${made.booking}`]);
});

it("publishes what changed while the older state was on its way, and in that order", async () => {
  const ledger = await aLedger();
  const written: number[] = [];
  await runInDurableObject(ledger, (object) => {
    object.boardStore = {
      put: async (_, { version }) => {
        // Opens the gate for others, as every call over the network does.
        if (written.length === 0) await object.hold(aHoldWish(object.offers({ verdict: "slip-check" })[0]!.id));
        await new Promise((done) => setTimeout(done, 1));
        written.push(version);
      },
    };
  });
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await publishAt(ledger, MONDAY + SECOND);
  expect(written).toEqual([1]);
  expect(await alarmOf(ledger)).toBe(MONDAY + 2 * SECOND);
  await publishAt(ledger, MONDAY + 2 * SECOND);
  expect(written).toEqual([1, 2]);
});

it("arms the alarm again although its own work breaks", async () => {
  const ledger = await aLedger();
  vi.spyOn(console, "log").mockImplementation(() => {});
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await runInDurableObject(ledger, (_, { storage }) => {
    storage.sql.exec("CREATE TRIGGER broken BEFORE DELETE ON publication BEGIN SELECT RAISE(ABORT, 'no'); END");
    storage.sql.exec("CREATE TRIGGER worse BEFORE UPDATE ON publication BEGIN SELECT RAISE(ABORT, 'no'); END");
  });
  await publishAt(ledger, MONDAY + SECOND);
  expect(await alarmOf(ledger)).toBe(MONDAY + SECOND + MINUTE);
  await runInDurableObject(ledger, (_, { storage }) => {
    storage.sql.exec("DROP TRIGGER broken");
    storage.sql.exec("DROP TRIGGER worse");
  });
  await publishAt(ledger, MONDAY + SECOND + MINUTE);
  expect(await countRows(ledger, "publication")).toBe(0);
});

it("arms an alarm that was lost when it starts again", async () => {
  const ledger = await aLedger();
  await ledger.hold(aHoldWish(await soonest(ledger)));
  await runInDurableObject(ledger, (_, { storage }) => storage.deleteAlarm());
  await evictDurableObject(ledger);
  // The system's clock, by which it starts, is far behind the test's: the next sweep comes first.
  expect(await alarmOf(ledger)).toBeGreaterThan(Date.now());
});

it("does without a store", async () => {
  const ledger = await aLedger();
  const { kvBoardStore } = await import("#src/adapters/board-store.ts");
  await runInDurableObject(ledger, (object) => {
    object.boardStore = kvBoardStore(undefined);
  });
  await aBooking(ledger);
  await publishAt(ledger, MONDAY + SECOND);
  expect(await countRows(ledger, "publication")).toBe(0);
});

it("refuses what a stale board still offers, with fresh offers", async () => {
  const ledger = await aLedger();
  await changeSettings(ledger, (settings) => settings);
  await publishAt(ledger, MONDAY + SECOND);
  await ledger.hold(aHoldWish(await soonest(ledger)));
  // The board that a reader far away still sees.
  const stale = SlotBoardSchema.parse(await readBoard(ledger));
  const [offer] = findOffers({
    settings: stale.settings,
    busy: busyOf(stale),
    verdict: "slip-check",
    now: MONDAY + SECOND,
  });
  const answer = await ledger.hold(aHoldWish(offer!.id));
  expect(answer).toMatchObject({ ok: false, refusal: { reason: "slot-not-offered", why: "taken" } });
  if (answer.ok || answer.refusal.reason !== "slot-not-offered") throw new Error("unreached");
  expect(answer.refusal.offers.map(({ id }) => id)).not.toContain(offer!.id);
  expect(await ledger.hold(aHoldWish(answer.refusal.offers[0]!.id))).toMatchObject({ ok: true });
});

it("tells the world nothing personal, and keeps of an owner's link only the hash", async () => {
  const ledger = await aLedger();
  const token = "AbCdEfGhIjKlMnOpQrStUv";
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(token));
  const ownerLinkHash = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  const hold = aHoldWish(await soonest(ledger), { draft: "hash-of-a-draft" });
  await ledger.hold(hold);
  const wish = aBookingWish(hold.id, { ownerLinkHash, draft: "hash-of-a-draft" });
  const booked = await ledger.book(wish);
  await publishAt(ledger, MONDAY + SECOND);
  const { keys } = await env.BOARD.list();
  const values = await Promise.all(keys.map(({ name }) => env.BOARD.get(name)));
  const world = JSON.stringify([keys, values]);
  expect(world).toContain(wish.id);
  const personal = [
    "Ada",
    "Quill",
    "2025550143",
    "owner.example",
    "Reed",
    "SN-0042",
    hold.source,
    ownerLinkHash,
    token,
  ];
  const inside = await storedText(ledger);
  for (const text of personal.slice(0, -1)) expect(inside).toContain(text);
  expect(inside).not.toContain(token);
  for (const text of personal) expect(world).not.toContain(text);
  expect(world).not.toContain((booked as { value: { jobNumber: string } }).value.jobNumber);
});
