import type { BusySpan } from "#shared/calendar/busy-span.ts";
import { type Quantum, quantum, quantumAt } from "#shared/calendar/quantum.ts";
import { boardVersion } from "#src/ledger/counter-rows.ts";
import { firstRow, numberIn, rowsOf, textIn } from "#src/ledger/row.ts";

/** Is any quantum of the span taken by another claim than `except`? Asked of the very rows that the key guards. */
export function isTaken(sql: SqlStorage, { bench, from, to }: BusySpan, except: string | null): boolean {
  const query = `SELECT 1 FROM bench_time
    WHERE bench = ? AND quantum >= ? AND quantum < ? AND claim IS NOT ? LIMIT 1`;
  return firstRow(sql, query, bench, from, to, except) !== undefined;
}

/** Takes all quanta of the span, or none and answers false: the key refuses what a decision may have overlooked. */
export function takeQuanta(sql: SqlStorage, { bench, from, to }: BusySpan, claim: string): boolean {
  const query = `WITH RECURSIVE each (quantum) AS (SELECT ? UNION ALL SELECT quantum + 1 FROM each WHERE quantum + 1 < ?)
    INSERT INTO bench_time (bench, quantum, claim) SELECT ?, quantum, ? FROM each`;
  try {
    sql.exec(query, from, to, bench, claim);
    return true;
  } catch (error) {
    if (error instanceof Error && error.message.includes("UNIQUE constraint failed: bench_time")) return false;
    throw error;
  }
}

export function freeQuanta(sql: SqlStorage, { bench, from, to }: BusySpan, claim: string): void {
  const query = "DELETE FROM bench_time WHERE bench = ? AND quantum >= ? AND quantum < ? AND claim = ?";
  sql.exec(query, bench, from, to, claim);
}

/** Time that is taken, and by whom. */
export type Taken = { readonly span: BusySpan; readonly claim: string };

/** Gives up one time for another, or answers false and leaves all as it was. */
export function swapQuanta(sql: SqlStorage, given: Taken | null, wanted: Taken): boolean {
  if (given !== null) freeQuanta(sql, given.span, given.claim);
  if (takeQuanta(sql, wanted.span, wanted.claim)) return true;
  if (given !== null) takeQuanta(sql, given.span, given.claim);
  return false;
}

/** Bench time that is held or booked and not over yet, sorted by `from`. */
export type ReadBusy = (now: number) => readonly BusySpan[];

/**
 * The version is asked of the storage every time; only where it has not changed are the spans read before still good.
 * So a rush for one slot reads a full year's calendar once, not once for each who comes too late.
 */
export function busyReader(sql: SqlStorage): ReadBusy {
  let known: { readonly version: number; readonly from: Quantum; readonly busy: readonly BusySpan[] } | null = null;
  return (now) => {
    const version = boardVersion(sql);
    const from = quantumAt(now);
    if (known === null || known.version !== version || known.from > from) {
      known = { version, from, busy: readBusy(sql, from) };
    }
    return known.busy;
  };
}

function readBusy(sql: SqlStorage, from: Quantum): readonly BusySpan[] {
  const query = `SELECT bench, from_quantum, to_quantum FROM hold WHERE state = 'open' AND to_quantum > ?
    UNION ALL
    SELECT bench, from_quantum, coalesce(freed_from, to_quantum) FROM booking
      WHERE to_quantum > ? AND (freed_from IS NULL OR freed_from > max(?, from_quantum))
    ORDER BY from_quantum`;
  return rowsOf(sql, query, from, from, from).map((row) => ({
    bench: textIn(row, "bench"),
    from: quantum(numberIn(row, "from_quantum")),
    to: quantum(numberIn(row, "to_quantum")),
  }));
}
