import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import type { JobRise } from "#shared/job/record-view.ts";
import { numberIn, rowsOf, textIn } from "#src/ledger/row.ts";

/** Enough to know a rise to a hundredth of a lbf·ft; older ones may come from other hands and tools. Default of this project. */
const MOST_RISES = 200;

/** What tightening the lock nut did to the units of a family, newest first, by the records that count. */
export const riseObservations = (sql: SqlStorage, family: UnitFamily): readonly JobRise[] =>
  rowsOf(
    sql,
    `SELECT job, rise_before, rise_after FROM record AS it WHERE family = ? AND rise_after IS NOT NULL
       AND NOT EXISTS (SELECT 1 FROM record AS later WHERE later.job = it.job AND later.step > it.step)
     ORDER BY step DESC LIMIT ?`,
    family,
    MOST_RISES,
  ).map((row) => ({
    job: textIn(row, "job"),
    before: numberIn(row, "rise_before"),
    after: numberIn(row, "rise_after"),
  }));
