import { APPROVAL_TABLES } from "#src/ledger/approval-tables.ts";
import { JOB_LIFE_TABLES } from "#src/ledger/job-life-tables.ts";
import { RECORD_TABLES } from "#src/ledger/record-tables.ts";
import { SHEET_TABLES } from "#src/ledger/sheet-tables.ts";
import { STAFF_TABLES } from "#src/ledger/staff-tables.ts";
import { STOCK_TABLES } from "#src/ledger/stock-tables.ts";
import { TABLES } from "#src/ledger/tables.ts";

/** Append only: a step that has run on a live ledger is never edited, only followed by another. */
const STEPS: readonly { readonly name: string; readonly sql: string }[] = [
  { name: "001-tables", sql: TABLES },
  { name: "002-job-life", sql: JOB_LIFE_TABLES },
  { name: "003-staff", sql: STAFF_TABLES },
  { name: "004-sheet", sql: SHEET_TABLES },
  { name: "005-stock", sql: STOCK_TABLES },
  { name: "006-approval", sql: APPROVAL_TABLES },
  { name: "007-record", sql: RECORD_TABLES },
];

/** Brings an object's tables up to date, all steps or none. The platform keeps no version of its own. */
export function bringTablesUpToDate(storage: DurableObjectStorage): void {
  storage.transactionSync(() => {
    const { sql } = storage;
    sql.exec("CREATE TABLE IF NOT EXISTS table_step (name TEXT PRIMARY KEY) STRICT");
    const done = new Set(
      sql
        .exec<{ name: string }>("SELECT name FROM table_step")
        .toArray()
        .map(({ name }) => name),
    );
    for (const step of STEPS) {
      if (done.has(step.name)) continue;
      sql.exec(step.sql);
      sql.exec("INSERT INTO table_step (name) VALUES (?)", step.name);
    }
  });
}
