import { benchJob } from "#shared/calendar/bench-job.ts";
import { BENCH_JOBS, type BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { DayJob } from "#shared/job/day-sheet.ts";
import { jobNumber } from "#shared/shop/job-number.ts";
import { verdictIn } from "#src/ledger/hold-rows.ts";
import { jobStateIn } from "#src/ledger/job-rows.ts";
import { numberIn, numberOrNullIn, type Row, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";
import { bookedTime, SLOT_COLUMNS, slotIn } from "#src/ledger/slot-columns.ts";

/**
 * The condition on the state is that of the index `open_job`, word for word: so only jobs that are not over are looked
 * at, however many are. The join is told its order, since the planner knows nothing of how few those are.
 */
export const DAY_SHEET_QUERY = `
  SELECT job.serial, job.state, job.verdict, json_extract(job.agreed, '$.work') AS agreed_work, job.booked_at,
    job.needs_bench_time, owner.name, booking.freed_from, ${SLOT_COLUMNS}, step.at, step.note,
    (SELECT who FROM approval_word WHERE approval = (
      SELECT id FROM approval WHERE approval.job = job.serial ORDER BY asked_at DESC, rowid DESC LIMIT 1)
      ORDER BY approval_word.step DESC LIMIT 1) AS said_last
  FROM job INDEXED BY open_job
    CROSS JOIN booking ON booking.job = job.serial
    CROSS JOIN owner ON owner.id = job.owner
    LEFT JOIN job_event AS step ON step.job = job.serial AND step.step = (
      SELECT max(step) FROM job_event WHERE job_event.job = job.serial AND from_state IS NOT NULL)
  WHERE job.state NOT IN ('cancelled', 'closed') AND (job.state <> 'booked' OR booking.from_quantum < ?)`;

/** All jobs that are not over, in no order; of those that have not come only what begins before a quantum. */
export const dayJobs = (sql: SqlStorage, before: number): readonly DayJob[] =>
  rowsOf(sql, DAY_SHEET_QUERY, before).map((row) => ({
    number: jobNumber(numberIn(row, "serial")),
    state: jobStateIn(row),
    work: workIn(row),
    ownerName: textIn(row, "name"),
    time: bookedTime(slotIn(row)),
    keepsTime: row["freed_from"] === null,
    needsBenchTime: numberIn(row, "needs_bench_time") === 1,
    ownerAsks: row["said_last"] === "owner",
    since: numberOrNullIn(row, "at") ?? numberIn(row, "booked_at"),
    note: textOrNullIn(row, "note"),
  }));

function workIn(row: Row): BenchJob {
  const agreed = textOrNullIn(row, "agreed_work");
  return BENCH_JOBS.find((known) => known === agreed) ?? benchJob(verdictIn(row));
}
