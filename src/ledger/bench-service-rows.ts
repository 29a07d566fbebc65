import type { Service } from "#shared/job/record-schema.ts";
import { isSet } from "#shared/job/service-record.ts";
import { firstRow, numberIn } from "#src/ledger/row.ts";

/**
 * Starts the clocks of a job's unit from what the bench did, in place of what it said of this job before. Null = nothing
 * was done after all. The records are what stays; these rows are only read off the newest of them.
 */
export function setBenchServices(sql: SqlStorage, job: number, service: Service | null, now: number): void {
  const row = firstRow(sql, "SELECT unit FROM job WHERE serial = ?", job);
  if (row === undefined) throw new Error("No such job");
  const unit = numberIn(row, "unit");
  sql.exec("DELETE FROM service WHERE unit = ? AND told_by = 'bench'", unit);
  for (const kind of service === null ? [] : kindsOf(service)) {
    sql.exec(
      // In place of what its owner said at the same moment, too: the bench knows better.
      `INSERT OR REPLACE INTO service (unit, kind, told_at, told_by, date, engine_hours, slip_left_at)
       VALUES (?, ?, ?, 'bench', ?, ?, ?)`,
      unit,
      kind,
      now,
      service?.date ?? null,
      service?.engineHours ?? null,
      service?.left.slip?.mean ?? null,
    );
  }
}

/** A rebuild that ended without a slip reading is a rebuild all the same. */
const kindsOf = ({ work, left }: Service): readonly ("rebuild" | "slip-set")[] => [
  ...(work === "slip-check" ? [] : (["rebuild"] as const)),
  ...(isSet(left.slip) ? (["slip-set"] as const) : []),
];
