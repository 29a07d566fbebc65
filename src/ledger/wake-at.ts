import { nextPurge } from "#src/ledger/purge.ts";
import { firstRow, numberOrNullIn } from "#src/ledger/row.ts";

/** Things to drop can wait, so that a day of visitors is one waking an hour and not one for each. */
const PURGE_EVERY_MS = 3_600_000;

/** When to wake next: worked out from the rows every time, so that nothing can push another's waking back. */
export function wakeAt(sql: SqlStorage): number | null {
  const purgeAt = nextPurge(sql);
  const times = [
    timeOf(sql, "SELECT min(until) AS at FROM hold WHERE state = 'open'"),
    timeOf(sql, "SELECT min(due_at) AS at FROM publication"),
    purgeAt === null ? null : Math.ceil(purgeAt / PURGE_EVERY_MS) * PURGE_EVERY_MS,
  ].filter((at) => at !== null);
  return times.length === 0 ? null : Math.min(...times);
}

function timeOf(sql: SqlStorage, query: string): number | null {
  const row = firstRow(sql, query);
  return row === undefined ? null : numberOrNullIn(row, "at");
}
