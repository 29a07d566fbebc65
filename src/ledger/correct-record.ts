import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type CorrectionRefusal, type CorrectionWish, correctedService } from "#shared/job/record-correction.ts";
import { RECORD_VERSION } from "#shared/job/record-schema.ts";
import { recordThatCounts } from "#shared/job/record-standing.ts";
import { benchCase } from "#shared/job/sheet-case.ts";
import { setBenchServices } from "#src/ledger/bench-service-rows.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { appendRecord, recordsOfJob } from "#src/ledger/record-rows.ts";
import { settingsOf } from "#src/ledger/settings-rows.ts";
import { readSheet } from "#src/ledger/sheet-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Seals a record in the place of the newest. The same form sent twice finds that record replaced, and is refused. */
export function correctRecord(turn: Turn, wish: CorrectionWish): Outcome<null, CorrectionRefusal> {
  const { sql, now } = turn;
  const { number, ifHash, staff, why, change } = wish;
  const stored = findJob(sql, { by: "number", number });
  const counts = recordThatCounts(recordsOfJob(sql, number));
  if (stored === null || counts === null) return refuse({ reason: "no-record" });
  if (counts.hash !== ifHash) return refuse({ reason: "changed-meanwhile" });
  const { settings } = settingsOf(sql, counts.record.service.settingsVersion);
  const { answers } = benchCase(stored.job, readSheet(sql, stored.serial), settings);
  const service = correctedService(counts.record.service, change, { answers, settings });
  setBenchServices(sql, stored.serial, service, now);
  noteEvent(sql, stored.serial, { at: now, who: "shop", what: "record-corrected", staff, note: why });
  const made = { version: RECORD_VERSION, job: number, at: new Date(now).toISOString(), by: staff, service } as const;
  appendRecord(sql, { kind: "correction", ...made, supersedes: counts.hash, why });
  return accept(null);
}
