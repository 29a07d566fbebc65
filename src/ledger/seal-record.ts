import { benchFindings } from "#shared/job/bench-findings.ts";
import { recordCode } from "#shared/job/record-code.ts";
import { RECORD_VERSION, type Service } from "#shared/job/record-schema.ts";
import { recordThatCounts } from "#shared/job/record-standing.ts";
import { serviceRecord } from "#shared/job/service-record.ts";
import { benchCase, serialKnown } from "#shared/job/sheet-case.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import { PARTS } from "#shared/shop/parts.ts";
import { setBenchServices } from "#src/ledger/bench-service-rows.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import type { StoredJob } from "#src/ledger/job-rows.ts";
import type { MoveMaker } from "#src/ledger/move-rule.ts";
import { appendRecord, recordsOfJob } from "#src/ledger/record-rows.ts";
import { readSheet } from "#src/ledger/sheet-rows.ts";
import { usedByJob } from "#src/ledger/stock-rows.ts";
import { type Turn, today } from "#src/ledger/turn.ts";

/** Said of a record that takes the place of one from an earlier shipping. */
const SHIPPED_AGAIN = "The unit was shipped again.";

/**
 * Seals the record of what was done, and starts the unit's clocks from it: part of the move that ships a unit, in its
 * transaction. Where the job has records already, the new one takes the place of the newest.
 */
export function sealRecord(turn: Turn, stored: StoredJob, { staff }: Pick<MoveMaker, "staff">): void {
  const { sql, now } = turn;
  const { number } = stored.job;
  const service = serviceNow(turn, stored, staff);
  const made = { version: RECORD_VERSION, job: number, at: new Date(now).toISOString(), by: staff, service } as const;
  const earlier = recordsOfJob(sql, number).at(-1);
  setBenchServices(sql, stored.serial, service, now);
  const { hash } = appendRecord(
    sql,
    earlier === undefined
      ? { kind: "service", ...made }
      : { kind: "correction", ...made, supersedes: earlier.hash, why: SHIPPED_AGAIN },
  );
  noteEvent(sql, stored.serial, { at: now, who: "shop", what: "record-made", staff, note: recordCode(number, hash) });
}

/** Takes a job's record back: part of the undoing of its shipping. What was sealed stays, and says so when it is checked. */
export function withdrawRecord(turn: Turn, { serial, job }: StoredJob, { staff, note }: MoveMaker): void {
  const { sql, now } = turn;
  const counts = recordThatCounts(recordsOfJob(sql, job.number));
  if (counts === null) return;
  setBenchServices(sql, serial, null, now);
  noteEvent(sql, serial, { at: now, who: "shop", what: "record-withdrawn", staff, note });
  appendRecord(sql, {
    kind: "withdrawal",
    version: RECORD_VERSION,
    job: job.number,
    at: new Date(now).toISOString(),
    by: staff,
    supersedes: counts.hash,
    why: note ?? "",
  });
}

function serviceNow(turn: Turn, { serial, job }: StoredJob, sealedBy: string | null): Service {
  const settings = turn.settings();
  const sheet = readSheet(turn.sql, serial);
  return serviceRecord({
    serial: serialKnown(job.serial, sheet),
    bench: { ...benchCase(job, sheet, settings.settings), work: workNow(job).work },
    sheet,
    findings: benchFindings(job, sheet, settings.settings),
    parts: partsUsed(turn.sql, serial),
    settings,
    onDate: today(turn),
    sealedBy,
  });
}

/** What the job took, by part: of which shelf it came is the shop's own affair. */
function partsUsed(sql: SqlStorage, serial: number): Service["parts"] {
  const counts = new Map<string, number>();
  for (const { part, used } of usedByJob(sql, serial)) counts.set(part, (counts.get(part) ?? 0) + used);
  return PARTS.flatMap(({ part, name }) => {
    const count = counts.get(part) ?? 0;
    return count > 0 ? [{ part, name, count }] : [];
  });
}
