import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import { benchCase } from "#shared/job/sheet-case.ts";
import type { SheetView } from "#shared/job/sheet-view.ts";
import type { RiseObservation } from "#shared/slip/lock-nut-rise.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { numberIn, rowsOf } from "#src/ledger/row.ts";
import { readSheet } from "#src/ledger/sheet-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Enough to know a rise to a hundredth of a lbf·ft. Default of this project. */
const MOST_RISES = 200;

/** A job's sheet with what the shop has learnt from earlier ones; null = no such job. */
export function sheetView({ sql, settings }: Turn, number: string): SheetView | null {
  const found = findJob(sql, { by: "number", number });
  if (found === null) return null;
  const sheet = readSheet(sql, found.serial);
  const { unitFamily } = benchCase(found.job, sheet, settings().settings);
  return { sheet, rises: risesOf(sql, unitFamily) };
}

const risesOf = (sql: SqlStorage, family: UnitFamily): readonly RiseObservation[] =>
  rowsOf(
    sql,
    `SELECT rise_before, rise_after FROM record WHERE family = ? AND kind = 'service' AND rise_after IS NOT NULL
     ORDER BY step DESC LIMIT ?`,
    family,
    MOST_RISES,
  ).map((row) => ({ before: numberIn(row, "rise_before"), after: numberIn(row, "rise_after") }));
