import { instantOfQuantum, quantum } from "#shared/calendar/quantum.ts";
import { UNIT_FAMILIES, type UnitFamily } from "#shared/craft/vocabulary.ts";
import { jobNumber } from "#shared/shop/job-number.ts";
import { OVER } from "#shared/shop/job-state.ts";
import type { Part } from "#shared/shop/parts.ts";
import { type JobNeeds, type JobPart, RESERVING } from "#shared/shop/stock.ts";
import { firstRow, numberIn, type Row, rowsOf, textIn } from "#src/ledger/row.ts";

export type LaidOut = {
  readonly job: number;
  readonly part: string;
  readonly change: number;
  readonly at: number;
  readonly staff: string;
  readonly key: string;
};

export function keepLaidOut(sql: SqlStorage, { job, part, change, at, staff, key }: LaidOut): void {
  const query = "INSERT INTO laid_out (job, part, change, at, staff, key) VALUES (?, ?, ?, ?, ?, ?)";
  sql.exec(query, job, part, change, at, staff, key);
}

export const isKnownLaidOut = (sql: SqlStorage, key: string): boolean =>
  firstRow(sql, "SELECT 1 FROM laid_out WHERE key = ?", key) !== undefined;

/** By how much the bench changed what a job was planned to take. */
export const laidOutFor = (sql: SqlStorage, job: number): ReadonlyMap<string, number> =>
  sums(rowsOf(sql, "SELECT job, part, sum(change) AS count FROM laid_out WHERE job = ? GROUP BY part", job)).get(job) ??
  new Map();

/** What every job that is not over may still take. As many queries as tables, however many jobs. */
export function openNeeds(sql: SqlStorage): readonly JobNeeds[] {
  const used = sums(
    rowsOf(
      sql,
      `SELECT job, part, -sum(change) AS count FROM stock_entry WHERE job IN (${OPEN_JOBS}) GROUP BY job, part`,
    ),
  );
  const added = sums(
    rowsOf(sql, `SELECT job, part, sum(change) AS count FROM laid_out WHERE job IN (${OPEN_JOBS}) GROUP BY job, part`),
  );
  const query = `SELECT job.serial, coalesce(job.agreed, job.plan) ->> 'parts' AS parts, ${FAMILY} AS family, from_quantum
    FROM job JOIN booking ON booking.job = job.serial
    WHERE job.serial IN (${OPEN_JOBS}) ORDER BY from_quantum`;
  return rowsOf(sql, query).map((row) => {
    const serial = numberIn(row, "serial");
    const parts = JSON.parse(textIn(row, "parts")) as readonly Part[];
    return {
      number: jobNumber(serial),
      unitFamily: familyIn(row),
      startsAt: instantOfQuantum(quantum(numberIn(row, "from_quantum"))),
      parts: partsOf(parts, added.get(serial) ?? new Map(), used.get(serial) ?? new Map()),
    };
  });
}

type Counts = ReadonlyMap<string, number>;

/** How the unit is built: as the bench found it, or else as the owner said. */
export function familyNow(sql: SqlStorage, job: number): UnitFamily {
  const row = firstRow(sql, `SELECT ${FAMILY} AS family FROM job WHERE serial = ?`, job);
  return row === undefined ? "unknown" : familyIn(row);
}

const FAMILY = `coalesce(
  (SELECT entry ->> 'unitFamily' FROM sheet_entry WHERE sheet_entry.job = job.serial AND step = 'inspect' ORDER BY version DESC LIMIT 1),
  job.answers ->> 'unitFamily')`;

const familyIn = (row: Row): UnitFamily => UNIT_FAMILIES.find((known) => known === row["family"]) ?? "unknown";

/** The plan, then what was added to it, then what was taken without being on either. */
export function partsOf(planned: readonly Part[], added: Counts, used: Counts): readonly JobPart[] {
  const names = new Set([...planned.map(({ part }) => part), ...added.keys(), ...used.keys()]);
  return [...names].map((part) => ({
    part,
    planned: Math.max(0, (planned.find((it) => it.part === part)?.count ?? 0) + (added.get(part) ?? 0)),
    used: used.get(part) ?? 0,
  }));
}

const quoted = (states: readonly string[]): string => states.map((state) => `'${state}'`).join(", ");
/** Said in both ways, so that the short index of open jobs serves. */
const OPEN_JOBS = `SELECT serial FROM job WHERE state NOT IN (${quoted(OVER)}) AND state IN (${quoted(RESERVING)})`;

function sums(rows: readonly Row[]): ReadonlyMap<number, Counts> {
  const byJob = new Map<number, Map<string, number>>();
  for (const row of rows) {
    const job = numberIn(row, "job");
    const counts = byJob.get(job) ?? new Map<string, number>();
    byJob.set(job, counts.set(textIn(row, "part"), numberIn(row, "count")));
  }
  return byJob;
}
