import type { Job } from "#shared/shop/booking.ts";
import { numberIn, type Row, rowsOf, textIn } from "#src/ledger/row.ts";

type JobEvent = Job["history"][number];

/** What happened to a job after it was booked, in these words; the sentences for them live with the messages. */
export type JobEventName = "moved" | "cancelled" | "link-reissued" | "zone-law-moved";

export function noteEvent(sql: SqlStorage, job: number, event: JobEvent & { readonly what: JobEventName }): void {
  const query = `INSERT INTO job_event (job, step, at, who, what)
    SELECT ?1, coalesce(max(step), 0) + 1, ?2, ?3, ?4 FROM job_event WHERE job = ?1`;
  sql.exec(query, job, event.at, event.who, event.what);
}

export const eventsOf = (sql: SqlStorage, job: number): readonly JobEvent[] =>
  rowsOf(sql, "SELECT at, who, what FROM job_event WHERE job = ? ORDER BY step", job).map((row) => ({
    at: numberIn(row, "at"),
    who: whoIn(row, "who"),
    what: textIn(row, "what"),
  }));

export const whoIn = (row: Row, column: string): JobEvent["who"] => (textIn(row, column) === "shop" ? "shop" : "owner");
