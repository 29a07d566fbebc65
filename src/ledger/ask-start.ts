import { BENCH_JOBS } from "#shared/calendar/calendar-settings.ts";
import type { Approval } from "#shared/job/approval.ts";
import type { AskStart } from "#shared/job/approval-wish.ts";
import { benchFindings } from "#shared/job/bench-findings.ts";
import { offeredWork } from "#shared/job/offered-work.ts";
import { benchCase } from "#shared/job/sheet-case.ts";
import { plusDays } from "#shared/units/calendar-date.ts";
import { approvalsOf } from "#src/ledger/approval-rows.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { photosOf } from "#src/ledger/photo-rows.ts";
import { readSheet } from "#src/ledger/sheet-rows.ts";
import { type Turn, today } from "#src/ledger/turn.ts";

/** What the shop sees before it asks. */
export function askStart(turn: Turn, number: string): AskStart | null {
  const stored = findJob(turn.sql, { by: "number", number });
  if (stored === null) return null;
  const { serial, job } = stored;
  const { settings } = turn.settings();
  const sheet = readSheet(turn.sql, serial);
  const { answers } = benchCase(job, sheet, settings);
  return {
    findings: benchFindings(job, sheet, settings),
    offers: BENCH_JOBS.map((work) => offeredWork({ answers, plan: job.plan }, { work, priceMinor: null }, settings)),
    photos: photosOf(turn.sql, serial),
    approvals: approvalsOf(turn.sql, serial),
    untilDate: plusDays(today(turn), settings.bench.approvalDays),
  };
}

/** What the owner of a link was asked, newest first; nothing where the link opens nothing. */
export function approvalsByLink({ sql, now }: Turn, linkHash: string): readonly Approval[] {
  const stored = findJob(sql, { by: "link", hash: linkHash, now });
  return stored === null ? [] : approvalsOf(sql, stored.serial);
}
