import type { JobEventName } from "#shared/job/job-event-name.ts";
import { lastStanding } from "#shared/job/standing-move.ts";
import type { JobEvent } from "#shared/shop/booking.ts";
import { JOB_STATES, type JobState } from "#shared/shop/job-state.ts";
import { firstRow, numberIn, type Row, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";

type NewEvent = Pick<JobEvent, "at" | "who"> & {
  readonly what: JobEventName;
  readonly staff?: string | null;
  readonly note?: string | null;
  /** For a move: the state it left. */
  readonly fromState?: JobState;
};

export function noteEvent(sql: SqlStorage, job: number, event: NewEvent): void {
  const query = `INSERT INTO job_event (job, step, at, who, what, staff, note, from_state)
    SELECT ?1, coalesce(max(step), 0) + 1, ?2, ?3, ?4, ?5, ?6, ?7 FROM job_event WHERE job = ?1`;
  const { at, who, what, staff = null, note = null, fromState = null } = event;
  sql.exec(query, job, at, who, what, staff, note, fromState);
}

export const eventsOf = (sql: SqlStorage, job: number): readonly JobEvent[] =>
  rowsOf(sql, "SELECT at, who, what, staff, note FROM job_event WHERE job = ? ORDER BY step", job).map((row) => ({
    at: numberIn(row, "at"),
    who: whoIn(row, "who"),
    what: textIn(row, "what"),
    staff: textOrNullIn(row, "staff"),
    note: textOrNullIn(row, "note"),
  }));

/** A line of the history that changed the job's state. */
export type StandingMove = {
  readonly what: string;
  readonly fromState: JobState;
  readonly staff: string | null;
  readonly note: string | null;
};

/** The newest line that changed the job's state, an undoing too. */
export function lastStep(sql: SqlStorage, job: number): StandingMove | null {
  const row = firstRow(sql, `${MOVES} ORDER BY step DESC LIMIT 1`, job);
  return row === undefined ? null : moveIn(row);
}

export const lastStandingMove = (sql: SqlStorage, job: number): StandingMove | null =>
  lastStanding(rowsOf(sql, `${MOVES} ORDER BY step`, job).map(moveIn));

const MOVES = "SELECT what, from_state, staff, note FROM job_event WHERE job = ? AND from_state IS NOT NULL";

function moveIn(row: Row): StandingMove {
  const fromState = JOB_STATES.find((known) => known === row["from_state"]);
  if (fromState === undefined) throw new Error("A move from a state that is not known");
  return { what: textIn(row, "what"), fromState, staff: textOrNullIn(row, "staff"), note: textOrNullIn(row, "note") };
}

export const whoIn = (row: Row, column: string): JobEvent["who"] => (textIn(row, column) === "shop" ? "shop" : "owner");
