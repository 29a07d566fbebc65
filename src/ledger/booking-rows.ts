import type { Quantum } from "#shared/calendar/quantum.ts";
import type { Arrival, Receipt } from "#shared/shop/booking.ts";
import { jobNumber } from "#shared/shop/job-number.ts";
import { verdictIn } from "#src/ledger/hold-rows.ts";
import { jobStateIn } from "#src/ledger/job-rows.ts";
import { firstRow, numberIn, rowsOf, textIn } from "#src/ledger/row.ts";
import { bookedTime, SLOT_COLUMNS, type StoredSlot, slotIn, slotValues } from "#src/ledger/slot-columns.ts";

type NewBooking = {
  readonly job: number;
  readonly id: string;
  /** By which claim the bench time is taken. */
  readonly claim: string;
  readonly changeableUntil: number;
  readonly slot: StoredSlot;
};

export function keepBooking(sql: SqlStorage, { job, id, claim, changeableUntil, slot }: NewBooking): void {
  sql.exec(
    `INSERT INTO booking (job, id, claim, changeable_until, sequence, ${SLOT_COLUMNS}) VALUES (?, ?, ?, ?, 0, ?, ?, ?, ?, ?, ?, ?)`,
    job,
    id,
    claim,
    changeableUntil,
    ...slotValues(slot),
  );
}

/** Answers the new sequence number, by which a calendar program knows the newer state. */
export function moveBookingRow(
  sql: SqlStorage,
  { id, changeableUntil, slot }: Omit<NewBooking, "job" | "claim">,
): number {
  return sequenceAfter(
    sql,
    `UPDATE booking SET changeable_until = ?, sequence = sequence + 1, freed_from = NULL,
       (${SLOT_COLUMNS}) = (?, ?, ?, ?, ?, ?, ?) WHERE id = ? RETURNING sequence`,
    changeableUntil,
    ...slotValues(slot),
    id,
  );
}

export const raiseSequence = (sql: SqlStorage, id: string): number =>
  sequenceAfter(sql, "UPDATE booking SET sequence = sequence + 1 WHERE id = ? RETURNING sequence", id);

/** From where on the booked time is not kept any more; null = all of it is. */
export function setFreedFrom(sql: SqlStorage, job: number, from: Quantum | null): void {
  sql.exec("UPDATE booking SET freed_from = ? WHERE job = ?", from, job);
}

export function findReceipt(sql: SqlStorage, booking: string): Receipt | null {
  const query = `SELECT id, sequence, job.state, ${SLOT_COLUMNS} FROM booking JOIN job ON job.serial = booking.job
    WHERE booking.id = ?`;
  const row = firstRow(sql, query, booking);
  if (row === undefined) return null;
  const { bench, startsAt, endsAt } = slotIn(row);
  const version = numberIn(row, "sequence");
  const state = jobStateIn(row) === "cancelled" ? "cancelled" : "booked";
  return { booking, state, startsAt, endsAt, bench, version };
}

/** Bookings that are not over since the given quantum, of units that have not come, in no order. */
export function arrivalsSince(sql: SqlStorage, since: number): readonly Arrival[] {
  const query = `SELECT job.serial, job.state, job.verdict, job.post_by, owner.name, ${SLOT_COLUMNS}
    FROM booking JOIN job ON job.serial = booking.job JOIN owner ON owner.id = job.owner
    WHERE booking.to_quantum > ? AND job.state IN ('booked', 'cancelled')`;
  return rowsOf(sql, query, since).map((row) => ({
    number: jobNumber(numberIn(row, "serial")),
    state: jobStateIn(row),
    verdict: verdictIn(row),
    ownerName: textIn(row, "name"),
    time: bookedTime(slotIn(row)),
    postBy: textIn(row, "post_by"),
  }));
}

function sequenceAfter(sql: SqlStorage, query: string, ...values: readonly SqlStorageValue[]): number {
  const row = firstRow(sql, query, ...values);
  if (row === undefined) throw new Error("A booking that is not there was changed");
  return numberIn(row, "sequence");
}
