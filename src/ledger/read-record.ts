import { CHAIN_START } from "#shared/job/record-chain.ts";
import { chainLine } from "#shared/job/record-export.ts";
import { recordThatCounts } from "#shared/job/record-standing.ts";
import type { ChainLines, ChainStanding, RecordView } from "#shared/job/record-view.ts";
import type { ReadChain } from "#src/ledger/check-chain.ts";
import { findJob, type JobKey } from "#src/ledger/job-rows.ts";
import { chainEnd, entriesAfter, recordsOfJob, servicesOfUnit } from "#src/ledger/record-rows.ts";

/** The records of a job with the earlier services of its unit; null = no such job. */
export function readRecord(sql: SqlStorage, key: JobKey): RecordView | null {
  const found = findJob(sql, key);
  if (found === null) return null;
  const entries = recordsOfJob(sql, found.job.number);
  const counts = recordThatCounts(entries);
  return { entries, services: counts === null ? [] : servicesOfUnit(sql, counts) };
}

/** Looks through all of the chain, and says how it stands. */
export function chainStanding(sql: SqlStorage, chain: ReadChain): ChainStanding {
  const check = chain.whole();
  const { step, hash } = chainEnd(sql);
  return { entries: step, brokenAt: check.whole ? null : check.brokenAt, hash };
}

const LINES_AT_ONCE = 500;

/** The exported chain, some lines at a time. */
export function chainLines(sql: SqlStorage, after: number): ChainLines {
  const lines: string[] = [];
  for (const entry of entriesAfter(sql, { ...CHAIN_START, step: after })) {
    lines.push(chainLine(entry));
    if (lines.length === LINES_AT_ONCE) return { lines, next: entry.step };
  }
  return { lines, next: null };
}
