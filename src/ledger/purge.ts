import { rowsOf } from "#src/ledger/row.ts";
import type { Turn } from "#src/ledger/turn.ts";
import { WISH_LIVES_MS } from "#src/ledger/wish-rows.ts";

/** Drops what has outlived its use. Jobs and bookings stay: they are the shop's record. */
export function purge({ sql, now }: Turn): void {
  sql.exec("DELETE FROM draft WHERE expires_at <= ?", now);
  sql.exec("DELETE FROM session WHERE expires_at <= ?", now);
  sql.exec("DELETE FROM used_link WHERE expires_at <= ?", now);
  sql.exec("DELETE FROM wish WHERE at <= ?", now - WISH_LIVES_MS);
  // As long as the wish that made it: until then its end can be told from its never having been.
  sql.exec("DELETE FROM hold WHERE state <> 'open' AND until <= ?", now - WISH_LIVES_MS);
}

/** When there is next something to drop; null where there is nothing. Wishes come in the order of their row numbers. */
export function nextPurge(sql: SqlStorage): number | null {
  const query = `SELECT min(at) AS at FROM (
    SELECT min(expires_at) AS at FROM draft
    UNION ALL SELECT min(expires_at) FROM session
    UNION ALL SELECT min(expires_at) FROM used_link
    UNION ALL SELECT at + ? FROM (SELECT at FROM wish ORDER BY rowid LIMIT 1))`;
  const at = rowsOf(sql, query, WISH_LIVES_MS)[0]?.["at"];
  return typeof at === "number" ? at : null;
}
