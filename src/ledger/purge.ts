import { lastPurge, notePurge } from "#src/ledger/counter-rows.ts";
import { dropSilentDraft } from "#src/ledger/draft-rows.ts";
import { bookedHolds } from "#src/ledger/hold-rows.ts";
import { firstRow } from "#src/ledger/row.ts";
import { SESSION_IDLES_MS } from "#src/ledger/session-rows.ts";
import { TRIES_WINDOW_MS } from "#src/ledger/sign-in-tries.ts";
import type { Turn } from "#src/ledger/turn.ts";
import { WISH_LIVES_MS } from "#src/ledger/wish-rows.ts";

/** What is over is never shown; that it is dropped too can wait for a few hours. Default of this project. */
export const PURGE_EVERY_MS = 6 * 3_600_000;

/** Purges once in each period, however often it is called: a purge looks through all that ends. */
export function purgeIfDue(turn: Turn): void {
  const period = periodOf(turn.now);
  if (lastPurge(turn.sql) >= period) return;
  purge(turn);
  notePurge(turn.sql, period);
}

/** Drops what has outlived its use. Jobs and bookings stay: they are the shop's record. */
function purge({ sql, now }: Turn): void {
  sql.exec("DELETE FROM draft WHERE expires_at <= ?", now);
  sql.exec("DELETE FROM session WHERE expires_at <= ? OR seen_at <= ?", now, now - SESSION_IDLES_MS);
  sql.exec("DELETE FROM challenge WHERE expires_at <= ?", now);
  sql.exec("DELETE FROM sign_in_try WHERE at <= ?", now - TRIES_WINDOW_MS);
  sql.exec("DELETE FROM used_link WHERE expires_at <= ?", now);
  sql.exec("DELETE FROM wish WHERE at <= ?", now - WISH_LIVES_MS);
  // A conversation that became a job, and the hold it went through, are kept as long as the wish that made them: until
  // then the same form sent twice finds the answers that it is made of.
  const before = now - WISH_LIVES_MS;
  for (const { draft, until } of bookedHolds(sql, before)) if (draft !== null) dropSilentDraft(sql, draft, until);
  sql.exec("DELETE FROM hold WHERE state <> 'open' AND until <= ?", before);
}

/** When to look next for things to drop: at the full hours of a day, as long as there is anything that ends. */
export function nextPurge(sql: SqlStorage, now: number): number | null {
  const tables = ["draft", "wish", "session", "challenge", "sign_in_try", "used_link", "hold"];
  const isAny = tables.some((table) => firstRow(sql, `SELECT 1 FROM ${table} LIMIT 1`) !== undefined);
  return isAny ? (periodOf(now) + 1) * PURGE_EVERY_MS : null;
}

const periodOf = (now: number): number => Math.floor(now / PURGE_EVERY_MS);
