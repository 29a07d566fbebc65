import { runInDurableObject } from "cloudflare:test";
import { SHEET_STEPS } from "#shared/job/sheet-entry.ts";
import { serialOf } from "#shared/shop/job-number.ts";
import type { LedgerStub } from "#tests/ledger/a-ledger.ts";

/** Skips every step of a job's sheet, with a reason: the shortest way to a sheet that is complete. */
export const skipWholeSheet = (ledger: LedgerStub, number: string) =>
  runInDurableObject(ledger, (_, { storage: { sql } }) => {
    for (const step of SHEET_STEPS) {
      sql.exec(
        `INSERT INTO sheet_entry (job, step, version, key, at, staff, entry) VALUES (?, ?, 1, ?, 0, 'Bench', ?)`,
        serialOf(number),
        step,
        `${number}.${step}`,
        JSON.stringify({ kind: "skipped", why: "Not asked here" }),
      );
    }
  });
