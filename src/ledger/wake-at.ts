import { nextPurge } from "#src/ledger/purge.ts";
import { firstRow, numberOrNullIn } from "#src/ledger/row.ts";

/** When to wake next: worked out from the rows every time, so that nothing can push another's waking back. */
export function wakeAt(sql: SqlStorage, now: number): number | null {
  const times = [
    timeOf(sql, "SELECT min(until) AS at FROM hold WHERE state = 'open'"),
    // The last millisecond of a question's time still counts.
    timeOf(sql, "SELECT min(until) + 1 AS at FROM approval WHERE state = 'open'"),
    timeOf(sql, "SELECT min(due_at) AS at FROM publication"),
    timeOf(sql, "SELECT min(due_at) AS at FROM photo_bytes"),
    nextPurge(sql, now),
  ].filter((at) => at !== null);
  return times.length === 0 ? null : Math.min(...times);
}

function timeOf(sql: SqlStorage, query: string): number | null {
  const row = firstRow(sql, query);
  return row === undefined ? null : numberOrNullIn(row, "at");
}
