import { evictDurableObject, runInDurableObject } from "cloudflare:test";
import { describe, expect, it } from "vitest";
import { canonicalJson, type Json } from "#shared/basics/canonical-json.ts";
import { CHAIN_START, type ChainEntry, checkChain } from "#shared/job/record-chain.ts";
import { readRecordCode, recordCode } from "#shared/job/record-code.ts";
import { recordThatCounts, type SealedService } from "#shared/job/record-standing.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import { appendRecord } from "#src/ledger/record-rows.ts";
import { DULL_ENTRIES } from "#tests/job/a-sheet.ts";
import {
  aLedger,
  changeSettings,
  DAY,
  type LedgerStub,
  MONDAY,
  setClock,
  someAnswers,
} from "#tests/ledger/a-ledger.ts";
import { aShippedJob, GENTLE_SLIPS, takeTo } from "#tests/ledger/a-served-job.ts";

const stored = (ledger: LedgerStub) =>
  runInDurableObject(ledger, (_, { storage: { sql } }) =>
    sql.exec<ChainEntry>("SELECT step, before, body, hash FROM record ORDER BY step").toArray(),
  );

async function counting(ledger: LedgerStub, number: string): Promise<SealedService> {
  const sealed = recordThatCounts((await ledger.record(number))?.entries ?? []);
  if (sealed === null) throw new Error("No record counts");
  return sealed;
}

const codeOf = async (ledger: LedgerStub, number: string) => recordCode(number, (await counting(ledger, number)).hash);

async function standing(ledger: LedgerStub, code: string) {
  const read = readRecordCode(code);
  if (!read.ok) throw new Error(`${code} is no code`);
  return ledger.checkCode(read.value);
}

const undoShipping = (ledger: LedgerStub, number: string, note = "Wrong parcel") =>
  ledger.undoMove({ number, staff: "Wilma Bench", note, ifState: "shipped" });

const aChange = ({ record: { service } }: SealedService) => ({
  serial: service.unit.serial,
  engineHours: service.engineHours,
  foundReadings: service.found.slip?.readings ?? [],
  leftReadings: service.left.slip?.readings ?? [],
  parts: service.parts,
  note: service.note,
});

/** Changes what lies on the disk, past the database's own guards, and wakes the object anew. */
async function tamper(ledger: LedgerStub, query: string, ...values: (string | number)[]) {
  await runInDurableObject(ledger, (_, { storage: { sql } }) => {
    sql.exec("DROP TRIGGER IF EXISTS record_is_never_edited");
    sql.exec("DROP TRIGGER IF EXISTS record_is_never_dropped");
    sql.exec(query, ...values);
  });
  await evictDurableObject(ledger);
}

describe("shipping a unit", () => {
  it("seals what was found, done and left, and starts the unit's clocks", async () => {
    const ledger = await aLedger();
    const { number } = await aShippedJob(ledger);
    const { record } = await counting(ledger, number);
    expect(record).toMatchObject({ kind: "service", version: 1, job: number, by: "Wilma Bench" });
    expect(record.service).toMatchObject({
      unit: { family: "set-nut", serial: "SN0042" },
      date: "2040-05-07",
      engineHours: 110,
      work: "slip-check",
      found: { slip: { mean: 10.85, breakaway: 12.1, decision: null } },
      left: { target: 12.5, band: { low: 12, high: 13 }, slip: { mean: 12.5167, decision: { is: "accept" } } },
      worked: ["Sedge Hallow", "Wilma Bench"],
      next: { slipCheckAtHours: 210, rebuildAtHours: 300, rebuildBy: "2042-04-01", slipInterval: 100 },
    });
    expect(record.service.left.rise).toEqual({ before: 11, after: 12.5167 });
    const services = await runInDurableObject(ledger, (_, { storage: { sql } }) =>
      sql.exec("SELECT kind, date, engine_hours, slip_left_at FROM service WHERE told_by = 'bench'").toArray(),
    );
    expect(services).toEqual([{ kind: "slip-set", date: "2040-05-07", engine_hours: 110, slip_left_at: 12.5167 }]);
  });

  it("holds nothing of the owner", async () => {
    const ledger = await aLedger();
    const contact = { name: "Quillon Vantongeren", phone: "+12025550199", email: "quillon@vantongeren.example" };
    const returnTo = { lines: ["99 Zephyrine Row"], postcode: "00042", region: "Xanthe", country: "US" };
    await aShippedJob(ledger, { booking: { contact, returnTo } });
    const [{ body } = { body: "" }] = await stored(ledger);
    for (const personal of [contact.name, contact.phone, contact.email, "Quillon", "Zephyrine", "00042", "Xanthe"]) {
      expect(body).not.toContain(personal);
    }
    expect(body).toContain("Sedge Hallow");
  });

  it("is sealed in the move's own transaction: where the one fails, so does the other", async () => {
    const ledger = await aLedger();
    const { number } = await aShippedJob(ledger);
    await undoShipping(ledger, number);
    await runInDurableObject(ledger, (_, { storage: { sql } }) => {
      sql.exec("CREATE TRIGGER full_disk BEFORE INSERT ON record BEGIN SELECT RAISE(ABORT, 'full'); END");
    });
    const wish = { number, move: "ship", staff: "Wilma Bench", note: null, ifState: "set" } as const;
    await expect(runInDurableObject(ledger, (it) => it.moveJob(wish))).rejects.toThrow("full");
    expect((await ledger.job(number))?.state).toBe("set");
  });

  it("is written as text that stays the same, and follows the record before it", async () => {
    const ledger = await aLedger();
    await aShippedJob(ledger);
    await aShippedJob(ledger);
    const entries = await stored(ledger);
    expect(entries.length).toBe(2);
    for (const { body } of entries) expect(canonicalJson(JSON.parse(body) as Json)).toBe(body);
    expect(checkChain(CHAIN_START, entries)).toEqual({
      whole: true,
      upTo: { step: 2, hash: entries[1]!.hash },
    });
  });
});

describe("a record that was sealed", () => {
  it("is neither edited nor dropped, whoever asks the database", async () => {
    const ledger = await aLedger();
    await aShippedJob(ledger);
    await runInDurableObject(ledger, (_, { storage: { sql } }) => {
      expect(() => sql.exec("UPDATE record SET body = '{}'")).toThrow("never edited");
      expect(() => sql.exec("DELETE FROM record")).toThrow("never dropped");
    });
  });

  it("stays as it is when settings change, and a correction judges by the settings of its day", async () => {
    const ledger = await aLedger();
    const { number } = await aShippedJob(ledger);
    const before = await stored(ledger);
    await changeSettings(ledger, (settings) => ({
      ...settings,
      slip: { ...SLIP_DEFAULTS, gentleLow: 14, gentleHigh: 15, hardLow: 15, hardHigh: 16, coverage: 0.6 },
      triage: { ...settings.triage, slipHoursEasy: 10, slipHoursMixed: 10, slipHoursHard: 10 },
    }));
    expect(await stored(ledger)).toEqual(before);
    const sealed = await counting(ledger, number);
    const change = { ...aChange(sealed), engineHours: 120 };
    await ledger.correctRecord({ number, ifHash: sealed.hash, staff: "Marsh Penrose", why: "Meter misread", change });
    const { record } = await counting(ledger, number);
    expect(record.service.left).toEqual(sealed.record.service.left);
    expect(record.service.next).toMatchObject({ slipCheckAtHours: 220, slipInterval: 100 });
    expect(record.service.settingsVersion).toBe(1);
  });

  it("is superseded by a correction, and both codes say so", async () => {
    const ledger = await aLedger();
    const { number } = await aShippedJob(ledger);
    const sealed = await counting(ledger, number);
    const [first, change] = [await codeOf(ledger, number), { ...aChange(sealed), leftReadings: [12.6, 12.6, 12.65] }];
    expect(await standing(ledger, first)).toMatchObject({
      is: "genuine",
      glimpse: { date: "2040-05-07", family: "set-nut", serialEnd: "0042", slipLeft: 12.5167 },
    });
    const wish = { number, ifHash: sealed.hash, staff: "Marsh Penrose", why: "Typed wrong", change };
    expect(await ledger.correctRecord(wish)).toEqual({ ok: true, value: null });
    expect(await ledger.correctRecord(wish)).toEqual({ ok: false, refusal: { reason: "changed-meanwhile" } });
    const second = await codeOf(ledger, number);
    expect(await standing(ledger, first)).toMatchObject({ is: "corrected", by: second });
    expect(await standing(ledger, second)).toMatchObject({ is: "genuine", glimpse: { slipLeft: 12.6167 } });
    expect((await counting(ledger, number)).record).toMatchObject({ kind: "correction", supersedes: sealed.hash });
    expect((await ledger.job(number))?.history.at(-1)).toMatchObject({
      what: "record-corrected",
      staff: "Marsh Penrose",
    });
  });

  it("is taken back with the shipping, and replaced when the unit ships again", async () => {
    const ledger = await aLedger();
    const { number } = await aShippedJob(ledger);
    const first = await codeOf(ledger, number);
    expect(await undoShipping(ledger, number)).toMatchObject({ ok: true, value: { state: "set" } });
    expect(await standing(ledger, first)).toEqual({ is: "taken-back" });
    expect(recordThatCounts((await ledger.record(number))!.entries)).toBeNull();
    const services = await runInDurableObject(ledger, (_, { storage: { sql } }) =>
      sql.exec("SELECT kind FROM service WHERE told_by = 'bench'").toArray(),
    );
    expect(services).toEqual([]);
    await takeTo(ledger, number, ["ship"]);
    expect(await standing(ledger, first)).toMatchObject({ is: "corrected", by: await codeOf(ledger, number) });
    expect((await stored(ledger)).map(({ body }) => (JSON.parse(body) as { kind: string }).kind)).toEqual([
      "service",
      "withdrawal",
      "correction",
    ]);
    expect(checkChain(CHAIN_START, await stored(ledger)).whole).toBe(true);
  });

  it("is not known by another code", async () => {
    const ledger = await aLedger();
    const { number } = await aShippedJob(ledger);
    const other = await aLedger();
    await aShippedJob(other, { entries: { "turn-by-hand": { kind: "done", note: "Other" } } });
    expect(await standing(other, await codeOf(ledger, number))).toEqual({ is: "not-known" });
  });
});

describe("a chain that was tampered with", () => {
  it.each([
    ["a reading", `UPDATE record SET body = replace(body, '12.55', '12.56') WHERE step = 2`],
    ["a name", `UPDATE record SET body = replace(body, 'Sedge', 'Sedgy') WHERE step = 2`],
    ["a hash", `UPDATE record SET hash = '${"a".repeat(64)}' WHERE step = 2`],
    ["the hash before", `UPDATE record SET before = '${"b".repeat(64)}' WHERE step = 2`],
    ["a record that is gone", `DELETE FROM record WHERE step = 2`],
    ["a record of another place", `UPDATE record SET step = 9 WHERE step = 2`],
  ])("cannot be believed from there on: %s", async (_, query) => {
    const ledger = await aLedger();
    const numbers = [];
    for (let job = 0; job < 3; job += 1) numbers.push((await aShippedJob(ledger)).number);
    const codes = await Promise.all(numbers.map((number) => codeOf(ledger, number)));
    for (const code of codes) expect(await standing(ledger, code)).toMatchObject({ is: "genuine" });
    await tamper(ledger, query);
    await setClock(ledger, MONDAY);
    expect(await ledger.chainStanding()).toMatchObject({ brokenAt: 2 });
    expect(await standing(ledger, codes[0]!)).toEqual({ is: "damaged", where: "later" });
    expect(await standing(ledger, codes[1]!)).toEqual({ is: "damaged", where: "here" });
    expect(await standing(ledger, codes[2]!)).toEqual({ is: "damaged", where: "here" });
  });

  it("is seen by a record's own code even while the object is awake", async () => {
    const ledger = await aLedger();
    const { number } = await aShippedJob(ledger);
    const code = await codeOf(ledger, number);
    expect(await standing(ledger, code)).toMatchObject({ is: "genuine" });
    await runInDurableObject(ledger, (_, { storage: { sql } }) => {
      sql.exec("DROP TRIGGER record_is_never_edited");
      sql.exec("UPDATE record SET body = replace(body, '12.55', '12.56')");
    });
    expect(await standing(ledger, code)).toEqual({ is: "damaged", where: "here" });
  });
});

describe("a unit's history", () => {
  it("follows the serial number from job to job, and shows nobody what came later", async () => {
    const ledger = await aLedger();
    const first = await aShippedJob(ledger, { booking: { serial: "sn 0042" } });
    await setClock(ledger, MONDAY + 30 * DAY);
    const answers = someAnswers({ engineHours: 190 });
    const second = await aShippedJob(ledger, { booking: { serial: "SN-0042", answers } });
    const third = await aShippedJob(ledger, { booking: { serial: "SN-0099", answers } });
    const none = await aShippedJob(ledger, { booking: { serial: null, answers } });
    const jobsOf = async (number: string) => (await ledger.record(number))?.services.map(({ record }) => record.job);
    expect(await jobsOf(first.number)).toEqual([first.number]);
    expect(await jobsOf(second.number)).toEqual([first.number, second.number]);
    expect(await jobsOf(third.number)).toEqual([third.number]);
    expect(await jobsOf(none.number)).toEqual([none.number]);
  });

  it("goes by the serial number that the bench reads, where its owner gave none or another", async () => {
    const ledger = await aLedger();
    const read = { inspect: { ...DULL_ENTRIES.inspect, serial: "sn-0042" } };
    const first = await aShippedJob(ledger, { booking: { serial: null }, entries: read });
    await setClock(ledger, MONDAY + 30 * DAY);
    const answers = someAnswers({ engineHours: 190 });
    const second = await aShippedJob(ledger, { booking: { serial: "SN-9999", answers }, entries: read });
    const services = (await ledger.record(second.number))?.services ?? [];
    expect(services.map(({ record }) => record.job)).toEqual([first.number, second.number]);
    expect(services.map(({ record }) => record.service.unit.serial)).toEqual(["SN0042", "SN0042"]);
  });

  it("has of each job the record that counts", async () => {
    const ledger = await aLedger();
    const first = await aShippedJob(ledger);
    const sealed = await counting(ledger, first.number);
    const change = { ...aChange(sealed), engineHours: 105 };
    await ledger.correctRecord({ number: first.number, ifHash: sealed.hash, staff: "Marsh", why: "Misread", change });
    await setClock(ledger, MONDAY + DAY);
    const second = await aShippedJob(ledger);
    const gone = await aShippedJob(ledger);
    await undoShipping(ledger, gone.number);
    await setClock(ledger, MONDAY + 2 * DAY);
    const last = await aShippedJob(ledger);
    const services = (await ledger.record(last.number))?.services ?? [];
    expect(services.map(({ record }) => [record.job, record.service.engineHours])).toEqual([
      [first.number, 105],
      [second.number, 110],
      [last.number, 110],
    ]);
  });
});

it("learns the lock nut's rise from records that count, newest first", async () => {
  const ledger = await aLedger();
  const rise = async (before: number) => {
    const tries = [{ nutDegrees: 250, shimMm: null, slip: before, loosened: false }];
    const entry = { ...GENTLE_SLIPS["slip-before-lock"], tries } as NonNullable<(typeof GENTLE_SLIPS)["final-slip"]>;
    return aShippedJob(ledger, { entries: { "slip-before-lock": entry } });
  };
  const first = await rise(11);
  const second = await rise(11.2);
  const gone = await rise(9);
  await undoShipping(ledger, gone.number);
  const sealed = await counting(ledger, first.number);
  const change = { ...aChange(sealed), leftReadings: [12.4, 12.4, 12.4] };
  await ledger.correctRecord({ number: first.number, ifHash: sealed.hash, staff: "Marsh", why: "Misread", change });
  const rises = await ledger.rises("set-nut");
  expect(rises).toEqual([
    { job: first.number, before: 11, after: 12.4 },
    { job: second.number, before: 11.2, after: 12.5167 },
  ]);
  expect(await ledger.rises("shim-stack")).toEqual([]);
  expect((await ledger.sheet(second.number))?.rises).toMatchObject([{ before: 11 }, { before: 11.2 }]);
});

it("reads no rise where the lock nut was not tightened, or the tools differ", async () => {
  const ledger = await aLedger();
  const skipped = await aShippedJob(ledger, { entries: { "lock-nut": { kind: "skipped", why: "Left as it was" } } });
  expect((await counting(ledger, skipped.number)).record.service.left.rise).toBeNull();
  const tool = { kind: "dial", accuracyPercent: 2, resolution: 0.1 } as const;
  const other = await aShippedJob(ledger, {
    entries: { "slip-before-lock": { ...GENTLE_SLIPS["slip-before-lock"], tool } as never },
  });
  expect((await counting(ledger, other.number)).record.service.left.rise).toBeNull();
});

it("exports the chain line by line", async () => {
  const ledger = await aLedger();
  await aShippedJob(ledger);
  await aShippedJob(ledger);
  const entries = await stored(ledger);
  const { lines, next } = await ledger.chainLines(0);
  expect(next).toBeNull();
  expect(lines.map((line) => JSON.parse(line) as unknown)).toEqual(
    entries.map((entry) => ({ ...entry, body: JSON.parse(entry.body) as unknown })),
  );
  expect((await ledger.chainLines(1)).lines).toEqual(lines.slice(1));
});

it("seals nothing that could not be read again: a record is never mended", async () => {
  const ledger = await aLedger();
  const { number } = await aShippedJob(ledger);
  const { record } = await counting(ledger, number);
  const bad = { ...record, service: { ...record.service, note: "x".repeat(2001) } };
  await runInDurableObject(ledger, (_, { storage: { sql } }) => {
    expect(() => appendRecord(sql, bad)).toThrow();
    expect(() => appendRecord(sql, { ...record, by: "Wilma Bench" })).not.toThrow();
  });
  expect(await stored(ledger)).toHaveLength(2);
});
