import type { BenchSheet, SheetEntry, StoredEntry } from "#shared/job/sheet-entry.ts";
import { SheetEntrySchema, sheetStepIn } from "#shared/job/sheet-schema.ts";
import { firstRow, numberIn, type Row, rowsOf, textIn } from "#src/ledger/row.ts";

/** The newest entry of each step of a job. */
export const readSheet = (sql: SqlStorage, serial: number): BenchSheet =>
  Object.fromEntries(
    rowsOf(
      sql,
      // SQLite takes the other columns from the row that has the maximum.
      "SELECT step, max(version) AS version, at, staff, entry FROM sheet_entry WHERE job = ? GROUP BY step",
      serial,
    )
      .map(storedIn)
      .map((stored) => [stored.step, stored]),
  );

/** All that was ever written on a job's sheet, in order. */
export const sheetHistory = (sql: SqlStorage, serial: number): readonly StoredEntry[] =>
  rowsOf(sql, "SELECT step, version, at, staff, entry FROM sheet_entry WHERE job = ? ORDER BY rowid", serial).map(
    storedIn,
  );

/** What a key has written, and for which job. */
export function entryOfKey(
  sql: SqlStorage,
  key: string,
): { readonly job: number; readonly stored: StoredEntry } | null {
  const row = firstRow(sql, "SELECT job, step, version, at, staff, entry FROM sheet_entry WHERE key = ?", key);
  return row === undefined ? null : { job: numberIn(row, "job"), stored: storedIn(row) };
}

export function appendEntry(sql: SqlStorage, job: number, key: string, stored: StoredEntry): void {
  const { step, version, at, by, entry } = stored;
  const query = "INSERT INTO sheet_entry (job, step, version, key, at, staff, entry) VALUES (?, ?, ?, ?, ?, ?, ?)";
  sql.exec(query, job, step, version, key, at, by, JSON.stringify(entry));
}

function storedIn(row: Row): StoredEntry {
  const step = sheetStepIn(textIn(row, "step"));
  if (step === null) throw new Error("A sheet has a step that is not known");
  const entry: SheetEntry = SheetEntrySchema.parse(JSON.parse(textIn(row, "entry")));
  return { step, version: numberIn(row, "version"), at: numberIn(row, "at"), by: textIn(row, "staff"), entry };
}
