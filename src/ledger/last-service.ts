import { unitSerial } from "#shared/craft/unit-serial.ts";
import { RecordSchema } from "#shared/job/record-schema.ts";
import type { LastService } from "#shared/job/wear-since.ts";
import { rowsOf, textIn } from "#src/ledger/row.ts";

/** The newest record of a unit that counts, of another job than this one; null = none, or a unit without a serial number. */
export function lastService(
  sql: SqlStorage,
  unit: { readonly serial: string | null; readonly job: string },
): LastService | null {
  const serial = unitSerial(unit.serial);
  if (serial === null) return null;
  const [row] = rowsOf(
    sql,
    `SELECT body FROM record AS it WHERE unit_serial = ? AND job <> ?
       AND NOT EXISTS (SELECT 1 FROM record AS later WHERE later.job = it.job AND later.step > it.step)
     ORDER BY step DESC LIMIT 1`,
    serial,
    unit.job,
  );
  const record = row === undefined ? null : RecordSchema.parse(JSON.parse(textIn(row, "body")));
  if (record === null || record.kind === "withdrawal") return null;
  const { date, engineHours, left } = record.service;
  const slip = left.slip;
  const known = slip?.uncertainty == null ? null : { lbfFt: slip.mean, uncertainty: slip.uncertainty.standard };
  return { date, engineHours, left: known };
}
