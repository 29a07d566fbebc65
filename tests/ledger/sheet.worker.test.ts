import { runInDurableObject } from "cloudflare:test";
import { expect, it } from "vitest";
import type { SheetEntry } from "#shared/job/sheet-entry.ts";
import type { EntryWish } from "#shared/job/sheet-wish.ts";
import { serialOf } from "#shared/shop/job-number.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import { sheetHistory } from "#src/ledger/sheet-rows.ts";
import { DULL_ENTRIES } from "#tests/job/a-sheet.ts";
import {
  aBooking,
  aLedger,
  changeSettings,
  DAY,
  type LedgerStub,
  MINUTE,
  MONDAY,
  rebuildAnswers,
  setClock,
} from "#tests/ledger/a-ledger.ts";

let made = 0;
const aWish = (number: string, change: Partial<EntryWish> = {}): EntryWish => ({
  number,
  step: "screws",
  after: 0,
  entry: { kind: "done", note: null },
  key: `key-of-sixteen-${made++}`,
  staff: "Sedge Hallow",
  by: null,
  ...change,
});

/** A rebuild of a set-nut unit, in any state. */
async function aJobIn(ledger: LedgerStub, state: JobState): Promise<string> {
  const { number } = await aBooking(ledger, {
    hold: { verdict: "full-rebuild" },
    booking: { answers: rebuildAnswers },
  });
  await putInto(ledger, number, state);
  return number;
}

const putInto = (ledger: LedgerStub, number: string, state: JobState) =>
  runInDurableObject(ledger, (_, { storage }) => {
    storage.sql.exec("UPDATE job SET state = ? WHERE serial = ?", state, serialOf(number));
  });

const historyOf = (ledger: LedgerStub, number: string) =>
  runInDurableObject(ledger, (_, { storage }) => sheetHistory(storage.sql, serialOf(number)!));

it("appends every entry and shows each step's newest, with who wrote it and when", async () => {
  const ledger = await aLedger();
  const number = await aJobIn(ledger, "on-bench");
  const first = await ledger.keepEntry(aWish(number));
  await setClock(ledger, MONDAY + MINUTE);
  const second = await ledger.keepEntry(
    aWish(number, { after: 1, entry: { kind: "done", note: "In pattern" }, staff: "Tansy Marl" }),
  );
  expect(first).toMatchObject({ ok: true, value: { version: 1, at: MONDAY, by: "Sedge Hallow" } });
  expect(second).toMatchObject({ ok: true, value: { version: 2, at: MONDAY + MINUTE, by: "Tansy Marl" } });
  expect((await ledger.sheet(number))?.sheet).toEqual({ screws: second.ok ? second.value : null });
  expect(await historyOf(ledger, number)).toMatchObject([
    { version: 1 },
    { version: 2, entry: { note: "In pattern" } },
  ]);
  expect((await ledger.sheet(number))?.earlier).toMatchObject([{ step: "screws", version: 1, by: "Sedge Hallow" }]);
  const written = (await ledger.job(number))?.history.filter(({ what }) => what === "sheet-written");
  expect(written).toMatchObject([
    { who: "shop", staff: "Sedge Hallow", note: "screws" },
    { who: "shop", staff: "Tansy Marl", note: "screws" },
  ]);
});

it("keeps what is sent twice once, and answers both times the same, whatever came between", async () => {
  const ledger = await aLedger();
  const number = await aJobIn(ledger, "on-bench");
  const wish = aWish(number);
  const first = await ledger.keepEntry(wish);
  expect(await ledger.keepEntry(wish)).toEqual(first);
  await ledger.keepEntry(aWish(number, { after: 1 }));
  await putInto(ledger, number, "set");
  await setClock(ledger, MONDAY + DAY);
  expect(await ledger.keepEntry(wish)).toEqual(first);
  expect(await historyOf(ledger, number)).toHaveLength(2);
});

it("a key that comes with another entry, step or job is refused", async () => {
  const ledger = await aLedger();
  const [number, other] = [await aJobIn(ledger, "on-bench"), await aJobIn(ledger, "on-bench")];
  const wish = aWish(number);
  await ledger.keepEntry(wish);
  const reused = { ok: false, refusal: { reason: "key-reused" } };
  expect(await ledger.keepEntry({ ...wish, entry: { kind: "done", note: "Else" } })).toEqual(reused);
  expect(await ledger.keepEntry({ ...wish, step: "impeller" })).toEqual(reused);
  expect(await ledger.keepEntry({ ...wish, number: other })).toEqual(reused);
});

it("what somebody else wrote is not credited to whoever is signed in, and is theirs who take it over", async () => {
  const ledger = await aLedger();
  const number = await aJobIn(ledger, "received");
  const wish = aWish(number, { by: "Tansy Marl" });
  const refusal = { reason: "other-writer", writer: "Tansy Marl", signedIn: "Sedge Hallow" };
  expect(await ledger.keepEntry(wish)).toEqual({ ok: false, refusal });
  expect(await historyOf(ledger, number)).toEqual([]);
  expect((await ledger.job(number))?.state).toBe("received");
  const mine = { ...wish, by: "Sedge Hallow" };
  expect(await ledger.keepEntry(mine)).toMatchObject({ ok: true, value: { version: 1, by: "Sedge Hallow" } });
});

it("an entry whose answer was lost stays its writer's, whoever sends it again", async () => {
  const ledger = await aLedger();
  const number = await aJobIn(ledger, "on-bench");
  const wish = aWish(number, { staff: "Tansy Marl", by: "Tansy Marl" });
  const first = await ledger.keepEntry(wish);
  expect(await ledger.keepEntry({ ...wish, staff: "Sedge Hallow" })).toEqual(first);
  expect(await ledger.keepEntry({ ...wish, staff: "Sedge Hallow", by: "Sedge Hallow" })).toEqual(first);
});

it("two who write the same step: the second is shown the first's entry, and may write after it", async () => {
  const ledger = await aLedger();
  const number = await aJobIn(ledger, "on-bench");
  const theirs = await ledger.keepEntry(aWish(number, { staff: "Tansy Marl" }));
  const mine = aWish(number, { entry: { kind: "done", note: "Mine" } });
  const refusal = { reason: "written-meanwhile", newer: theirs.ok ? theirs.value : null };
  expect(await ledger.keepEntry(mine)).toEqual({ ok: false, refusal });
  expect(await ledger.keepEntry({ ...mine, after: 7 })).toEqual({ ok: false, refusal });
  expect(await ledger.keepEntry({ ...mine, after: 1 })).toMatchObject({ ok: true, value: { version: 2 } });
  expect(await historyOf(ledger, number)).toMatchObject([{ by: "Tansy Marl" }, { entry: { note: "Mine" } }]);
});

it("the first entry puts a received unit on the bench, and in every other state the sheet is closed", async () => {
  const ledger = await aLedger();
  const received = await aJobIn(ledger, "received");
  expect(await ledger.keepEntry(aWish(received))).toMatchObject({ ok: true });
  const job = await ledger.job(received);
  expect(job?.state).toBe("on-bench");
  expect(job?.history.map(({ what }) => what)).toEqual(["booked", "start", "sheet-written"]);
  for (const state of [
    "booked",
    "cancelled",
    "owner-to-decide",
    "part-to-come",
    "set",
    "set-aside",
    "shipped",
    "returned-unrepaired",
    "closed",
  ] as const) {
    await putInto(ledger, received, state);
    expect(await ledger.keepEntry(aWish(received, { after: 1 }))).toEqual({
      ok: false,
      refusal: { reason: "not-on-bench", state },
    });
  }
  expect(await historyOf(ledger, received)).toHaveLength(1);
});

it("a unit has the steps of its family, as found on opening, and each takes its own kind of entry", async () => {
  const ledger = await aLedger();
  const number = await aJobIn(ledger, "on-bench");
  const noSuchStep = { ok: false, refusal: { reason: "no-such-step" } };
  expect(await ledger.keepEntry(aWish(number, { step: "shims", entry: DULL_ENTRIES.shims }))).toEqual(noSuchStep);
  expect(await ledger.keepEntry(aWish(number, { entry: DULL_ENTRIES["needles-in"] }))).toEqual(noSuchStep);
  const inspect: SheetEntry = { ...DULL_ENTRIES.inspect, unitFamily: "shim-stack" } as never;
  expect(await ledger.keepEntry(aWish(number, { step: "inspect", entry: inspect }))).toMatchObject({ ok: true });
  expect(await ledger.keepEntry(aWish(number, { step: "shims", entry: DULL_ENTRIES.shims }))).toMatchObject({
    ok: true,
  });
  expect(await ledger.keepEntry(aWish(number, { step: "plate-recess" }))).toEqual(noSuchStep);
  expect(await ledger.keepEntry(aWish("ZZZZ"))).toEqual({ ok: false, refusal: { reason: "no-such-job" } });
  expect(await ledger.sheet("ZZZZ")).toBeNull();
});

it("a job is set only with a complete sheet", async () => {
  const ledger = await aLedger();
  const number = await aJobIn(ledger, "on-bench");
  await changeSettings(ledger, (settings) => ({
    ...settings,
    bench: { ...settings.bench, needles: { ...settings.bench.needles, "set-nut": 40 } },
  }));
  const finish = () =>
    ledger.moveJob({ number, move: "finish", staff: "Sedge Hallow", note: null, ifState: "on-bench" });
  const gently = {
    kind: "slip",
    readings: [12.4, 12.5, 12.5],
    breakaway: 14,
    tool: { kind: "electronic", accuracyPercent: 1, resolution: 0.05 },
    why: null,
  } as const;
  for (const [step, entry] of Object.entries(DULL_ENTRIES)) {
    if (step === "shims" || step === "final-slip") continue;
    expect(await ledger.keepEntry(aWish(number, { step: step as never, entry }))).toMatchObject({ ok: true });
  }
  expect(await finish()).toEqual({
    ok: false,
    refusal: { reason: "not-ready", block: { what: "sheet-not-complete", steps: ["final-slip"] } },
  });
  await ledger.keepEntry(aWish(number, { step: "final-slip", entry: gently }));
  expect(await finish()).toMatchObject({ ok: true, value: { state: "set" } });
});
