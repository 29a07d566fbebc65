import { benchCase, serialKnown } from "#shared/job/sheet-case.ts";
import type { SheetView } from "#shared/job/sheet-view.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { lastService } from "#src/ledger/last-service.ts";
import { riseObservations } from "#src/ledger/rise-rows.ts";
import { readSheet, sheetHistory } from "#src/ledger/sheet-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** A job's sheet with what the shop has learnt from earlier ones; null = no such job. */
export function sheetView({ sql, settings }: Turn, number: string): SheetView | null {
  const found = findJob(sql, { by: "number", number });
  if (found === null) return null;
  const sheet = readSheet(sql, found.serial);
  const { unitFamily } = benchCase(found.job, sheet, settings().settings);
  return {
    sheet,
    earlier: sheetHistory(sql, found.serial).filter(({ step, version }) => version !== sheet[step]?.version),
    lastService: lastService(sql, { serial: serialKnown(found.job.serial, sheet), job: number }),
    rises: riseObservations(sql, unitFamily),
  };
}
