import { instantOfQuantum, quantum } from "#shared/calendar/quantum.ts";
import type { Span } from "#shared/calendar/span.ts";
import type { BookedTime } from "#shared/shop/booking.ts";
import { numberIn, type Row, textIn } from "#src/ledger/row.ts";

/** Bench time as promised, with the quanta that it fills. */
export type StoredSlot = BookedTime & Span;

/** The columns of a slot, in the order of {@link slotValues}. */
export const SLOT_COLUMNS = "bench, bench_name, from_quantum, to_quantum, date, minute_of_day, zone";

export const slotValues = (slot: StoredSlot): readonly SqlStorageValue[] => [
  slot.bench,
  slot.benchName,
  slot.from,
  slot.to,
  slot.date,
  slot.minuteOfDay,
  slot.zone,
];

/** A quantum is exact time, so it is also the instant that the promised wall time was resolved to. */
export function slotIn(row: Row): StoredSlot {
  const from = quantum(numberIn(row, "from_quantum"));
  const to = quantum(numberIn(row, "to_quantum"));
  return {
    bench: textIn(row, "bench"),
    benchName: textIn(row, "bench_name"),
    from,
    to,
    startsAt: instantOfQuantum(from),
    endsAt: instantOfQuantum(to),
    date: textIn(row, "date"),
    minuteOfDay: numberIn(row, "minute_of_day"),
    zone: textIn(row, "zone"),
  };
}

/** What the world is told of a slot. */
export const bookedTime = ({ from: _, to: __, ...time }: StoredSlot): BookedTime => time;
