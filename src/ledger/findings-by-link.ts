import { type BenchFindings, benchFindings } from "#shared/job/bench-findings.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { readSheet } from "#src/ledger/sheet-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** The bench may still look at what it has not seen. */
const LOOKING: readonly JobState[] = ["received", "on-bench", "owner-to-decide", "part-to-come"];

/**
 * What the bench found, for the owner of a link whom nobody has asked anything: null before the unit was opened. While
 * the bench still looks, only what it is sure of counts: that parts went into the engine is told at once.
 */
export function findingsByLink({ sql, now, settings }: Turn, linkHash: string): BenchFindings | null {
  const stored = findJob(sql, { by: "link", hash: linkHash, now });
  if (stored === null) return null;
  const { serial, job } = stored;
  const findings = benchFindings(job, readSheet(sql, serial), settings().settings);
  const isSure = findings.engineDebris === "likely" || !LOOKING.includes(job.state);
  return findings.opened && isSure ? findings : null;
}
