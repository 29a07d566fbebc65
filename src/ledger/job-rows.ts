import type { BusySpan } from "#shared/calendar/busy-span.ts";
import { quantum } from "#shared/calendar/quantum.ts";
import { AnswersSchema } from "#shared/craft/answers-schema.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import { jobNumber, nextSerial, serialOf } from "#shared/shop/job-number.ts";
import type { JobPlan } from "#shared/shop/job-plan.ts";
import { JOB_STATES, type JobState } from "#shared/shop/job-state.ts";
import { ReturnToSchema } from "#shared/shop/people.ts";
import { eventsOf, whoIn } from "#src/ledger/event-rows.ts";
import type { Subject } from "#src/ledger/people-rows.ts";
import { firstRow, numberIn, numberOrNullIn, type Row, textIn, textOrNullIn } from "#src/ledger/row.ts";
import { bookedTime, SLOT_COLUMNS, type StoredSlot, slotIn } from "#src/ledger/slot-columns.ts";

/** Job numbers start here, so that the first ones have as many digits as those of the next ten years. */
const BEFORE_FIRST_SERIAL = 1023;

type NewJob = Pick<
  Job,
  "answers" | "plan" | "bookedAt" | "settingsVersion" | "goAheadMinor" | "returnTo" | "postBy" | "linkGeneration"
> & { readonly bookedBy: "owner" | "shop"; readonly bookedStaff: string | null };

/** A job with what the ledger needs to change it. */
export type StoredJob = {
  readonly serial: number;
  /** By which claim the bench time is taken. */
  readonly claim: string;
  readonly slot: StoredSlot;
  /** What is still taken of it; null = nothing. */
  readonly kept: BusySpan | null;
  readonly job: Job;
};

/** Answers the new job's serial and its number as printed. */
export function keepJob(sql: SqlStorage, subject: Subject, job: NewJob): { readonly serial: number; number: string } {
  const last = firstRow(sql, "SELECT max(serial) AS serial FROM job");
  const serial = nextSerial((last === undefined ? null : numberOrNullIn(last, "serial")) ?? BEFORE_FIRST_SERIAL);
  sql.exec(
    `INSERT INTO job (serial, state, booked_at, booked_by, booked_staff, owner, craft, unit, verdict, answers, plan, settings_version,
       price_minor, currency, go_ahead_minor, return_to, post_by, link_generation)
     VALUES (?, 'booked', ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    serial,
    job.bookedAt,
    job.bookedBy,
    job.bookedStaff,
    subject.owner,
    subject.craft,
    subject.unit,
    job.plan.judgement.verdict,
    JSON.stringify(job.answers),
    JSON.stringify(job.plan),
    job.settingsVersion,
    job.plan.quote.minor,
    job.plan.quote.currency,
    job.goAheadMinor,
    JSON.stringify(job.returnTo),
    job.postBy,
    job.linkGeneration,
  );
  return { serial, number: jobNumber(serial) };
}

/** How a job is asked for. A link counts only while it has not expired and no newer one was made. */
export type JobKey =
  | { readonly by: "number"; readonly number: string }
  | { readonly by: "booking"; readonly booking: string }
  | { readonly by: "link"; readonly hash: string; readonly now: number };

export function findJob(sql: SqlStorage, key: JobKey): StoredJob | null {
  const row = rowFor(sql, key);
  return row === undefined ? null : storedJobIn(sql, row);
}

export function setJobState(sql: SqlStorage, serial: number, state: JobState): void {
  sql.exec("UPDATE job SET state = ? WHERE serial = ?", state, serial);
}

export function setAgreed(sql: SqlStorage, serial: number, agreed: AgreedWork): void {
  sql.exec("UPDATE job SET agreed = ? WHERE serial = ?", JSON.stringify(agreed), serial);
}

export function setNeedsBenchTime(sql: SqlStorage, serial: number, needs: boolean): void {
  sql.exec("UPDATE job SET needs_bench_time = ? WHERE serial = ?", needs ? 1 : 0, serial);
}

export function setPostBy(sql: SqlStorage, serial: number, postBy: string): void {
  sql.exec("UPDATE job SET post_by = ? WHERE serial = ?", postBy, serial);
}

export function setLinkGeneration(sql: SqlStorage, serial: number, generation: number): void {
  sql.exec("UPDATE job SET link_generation = ? WHERE serial = ?", generation, serial);
}

export function jobStateIn(row: Row): JobState {
  const text = textIn(row, "state");
  const state = JOB_STATES.find((known) => known === text);
  if (state === undefined) throw new Error("A job is in a state that is not known");
  return state;
}

const JOB = `SELECT job.*, booking.id AS booking, claim, changeable_until, sequence, freed_from, ${SLOT_COLUMNS},
    owner.name, owner.phone, owner.email, unit.serial AS unit_serial
  FROM job JOIN booking ON booking.job = job.serial JOIN owner ON owner.id = job.owner JOIN unit ON unit.id = job.unit`;

function rowFor(sql: SqlStorage, key: JobKey): Row | undefined {
  switch (key.by) {
    case "number":
      return firstRow(sql, `${JOB} WHERE job.serial = ?`, serialOf(key.number));
    case "booking":
      return firstRow(sql, `${JOB} WHERE booking.id = ?`, key.booking);
    case "link":
      return firstRow(
        sql,
        `${JOB} JOIN link ON link.subject = job.serial AND link.generation = job.link_generation
         WHERE link.hash = ? AND link.purpose = 'owner' AND link.expires_at > ?`,
        key.hash,
        key.now,
      );
  }
}

function storedJobIn(sql: SqlStorage, row: Row): StoredJob {
  const serial = numberIn(row, "serial");
  const slot = slotIn(row);
  const to = quantum(numberOrNullIn(row, "freed_from") ?? slot.to);
  const phone = textOrNullIn(row, "phone");
  const email = textOrNullIn(row, "email");
  const job: Job = {
    number: jobNumber(serial),
    state: jobStateIn(row),
    bookedAt: numberIn(row, "booked_at"),
    booking: {
      id: textIn(row, "booking"),
      time: bookedTime(slot),
      changeableUntil: numberIn(row, "changeable_until"),
      sequence: numberIn(row, "sequence"),
      keepsTime: to === slot.to,
    },
    owner: { name: textIn(row, "name"), ...(phone !== null && { phone }), ...(email !== null && { email }) },
    returnTo: ReturnToSchema.parse(JSON.parse(textIn(row, "return_to"))),
    serial: textOrNullIn(row, "unit_serial"),
    goAheadMinor: numberOrNullIn(row, "go_ahead_minor"),
    answers: AnswersSchema.parse(JSON.parse(textIn(row, "answers"))),
    // What the owner was told, word for word: it is kept, not worked out again, and no rule reads it.
    plan: JSON.parse(textIn(row, "plan")) as JobPlan,
    agreed: agreedIn(row),
    needsBenchTime: numberIn(row, "needs_bench_time") === 1,
    postBy: textIn(row, "post_by"),
    settingsVersion: numberIn(row, "settings_version"),
    linkGeneration: numberIn(row, "link_generation"),
    history: [
      {
        at: numberIn(row, "booked_at"),
        who: whoIn(row, "booked_by"),
        what: "booked",
        staff: textOrNullIn(row, "booked_staff"),
        note: null,
      },
      ...eventsOf(sql, serial),
    ],
  };
  const kept = to > slot.from ? { bench: slot.bench, from: slot.from, to } : null;
  return { serial, claim: textIn(row, "claim"), slot, kept, job };
}

/** Kept as it was shown, as the plan is. */
function agreedIn(row: Row): AgreedWork | null {
  const agreed = textOrNullIn(row, "agreed");
  return agreed === null ? null : (JSON.parse(agreed) as AgreedWork);
}
