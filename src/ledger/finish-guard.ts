import { benchCase } from "#shared/job/sheet-case.ts";
import { sheetStanding } from "#shared/job/sheet-standing.ts";
import type { MoveRule } from "#src/ledger/move-rule.ts";
import { readSheet } from "#src/ledger/sheet-rows.ts";

/** A unit is set when every step of its sheet is done, or skipped with a reason. */
export const finishGuard: NonNullable<MoveRule["guard"]> = ({ sql, settings }, { serial, job }) => {
  const sheet = readSheet(sql, serial);
  const { complete, missing } = sheetStanding(benchCase(job, sheet, settings().settings), sheet);
  return complete ? null : { what: "sheet-not-complete", steps: missing };
};
