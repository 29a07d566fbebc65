import { canonicalJson } from "#shared/basics/canonical-json.ts";
import { CHAIN_START, type ChainEntry, type ChainMark, nextEntry } from "#shared/job/record-chain.ts";
import { RecordSchema, type ServiceRecord } from "#shared/job/record-schema.ts";
import { type SealedRecord, type SealedService, withService } from "#shared/job/record-standing.ts";
import { firstRow, numberIn, type Row, rowsOf, textIn } from "#src/ledger/row.ts";

/**
 * Appends a record to the chain. The only way in: nothing here is ever edited. So a record that could not be read again
 * is a bug that undoes the whole decision, and never a row.
 */
export function appendRecord(sql: SqlStorage, record: ServiceRecord): SealedRecord {
  RecordSchema.parse(record);
  const { step, before, body, hash } = nextEntry(chainEnd(sql), canonicalJson(record));
  sql.exec("INSERT INTO record (step, before, body, hash) VALUES (?, ?, ?, ?)", step, before, body, hash);
  return { step, hash, record };
}

/** The newest entry of the chain; its start where there is none. */
export function chainEnd(sql: SqlStorage): ChainMark {
  const row = firstRow(sql, "SELECT step, hash FROM record ORDER BY step DESC LIMIT 1");
  return row === undefined ? CHAIN_START : { step: numberIn(row, "step"), hash: textIn(row, "hash") };
}

/** The records of a job, oldest first. */
export const recordsOfJob = (sql: SqlStorage, job: string): readonly SealedRecord[] =>
  rowsOf(sql, "SELECT step, hash, body FROM record WHERE job = ? ORDER BY step", job).map(sealedIn);

/** The same as they lie in the chain. */
export const entriesOfJob = (sql: SqlStorage, job: string): readonly ChainEntry[] =>
  rowsOf(sql, "SELECT step, before, body, hash FROM record WHERE job = ? ORDER BY step", job).map(entryIn);

/**
 * The services of a unit up to a step of the chain, oldest first: of each job the record that counted then. Each booking
 * makes a new row of its unit, so the unit is known again by its serial number alone; a unit without one has only the
 * service at hand. What came later is left out: an earlier owner does not watch what becomes of the unit.
 */
export function servicesOfUnit(sql: SqlStorage, of: SealedService): readonly SealedService[] {
  const { serial } = of.record.service.unit;
  if (serial === null) return [of];
  const query = `SELECT step, hash, body FROM record AS it WHERE unit_serial = ?1 AND step <= ?2
      AND NOT EXISTS (SELECT 1 FROM record AS later WHERE later.job = it.job AND later.step > it.step AND later.step <= ?2)
    ORDER BY step`;
  return rowsOf(sql, query, serial, of.step)
    .flatMap((row) => withService(sealedIn(row)) ?? [])
    .toSorted((one, other) => (one.record.service.date < other.record.service.date ? -1 : 1));
}

/** The chain's entries after a mark, one by one: a long chain never lies in memory as a whole. */
export function* entriesAfter(sql: SqlStorage, { step }: ChainMark): Generator<ChainEntry> {
  for (let after = step; ; ) {
    const query = "SELECT step, before, body, hash FROM record WHERE step > ? ORDER BY step LIMIT ?";
    const entries = rowsOf(sql, query, after, ENTRIES_AT_ONCE).map(entryIn);
    yield* entries;
    const last = entries.at(-1);
    if (last === undefined || entries.length < ENTRIES_AT_ONCE) return;
    after = last.step;
  }
}

const ENTRIES_AT_ONCE = 250;

const entryIn = (row: Row): ChainEntry => ({
  step: numberIn(row, "step"),
  before: textIn(row, "before"),
  body: textIn(row, "body"),
  hash: textIn(row, "hash"),
});

const sealedIn = (row: Row): SealedRecord => ({
  step: numberIn(row, "step"),
  hash: textIn(row, "hash"),
  record: RecordSchema.parse(JSON.parse(textIn(row, "body"))),
});
