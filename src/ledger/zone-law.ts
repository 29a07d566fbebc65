import { quantumAt } from "#shared/calendar/quantum.ts";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import { offsetPeriods } from "#shared/calendar/zone-rules.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { firstRow, numberIn, rowsOf, textIn } from "#src/ledger/row.ts";
import { SLOT_COLUMNS, slotIn } from "#src/ledger/slot-columns.ts";
import type { Turn } from "#src/ledger/turn.ts";

/**
 * A zone's law may change under bookings that are made already. Their time on the bench is not moved in silence: each
 * job whose instant no longer shows the promised wall time is noted, once, for the shop to see to. Only where the law
 * that the runtime knows is not the one that it knew before are the bookings looked through.
 */
export function noteZoneLaw(turn: Turn): void {
  const { sql, now, settings } = turn;
  const { zone } = settings().settings.calendar;
  const year = new Date(now).getUTCFullYear();
  const offsets = JSON.stringify([offsetPeriods(zone, year), offsetPeriods(zone, year + 1)]);
  const known = firstRow(sql, "SELECT offsets FROM zone_law WHERE zone = ?", zone);
  if (known !== undefined && textIn(known, "offsets") === offsets) return;
  sql.exec("INSERT OR REPLACE INTO zone_law (zone, offsets) VALUES (?, ?)", zone, offsets);
  for (const job of movedByLaw(turn)) noteEvent(sql, job, { at: now, who: "shop", what: "zone-law-moved" });
}

function movedByLaw({ sql, now }: Turn): readonly number[] {
  const query = `SELECT job, ${SLOT_COLUMNS} FROM booking
    WHERE to_quantum > ? AND freed_from IS NULL
    AND NOT EXISTS (SELECT 1 FROM job_event WHERE job_event.job = booking.job AND what = 'zone-law-moved')`;
  return rowsOf(sql, query, quantumAt(now))
    .filter((row) => {
      const { zone, startsAt, date, minuteOfDay } = slotIn(row);
      const wall = wallOf(zone, startsAt);
      return wall.date !== date || wall.minuteOfDay !== minuteOfDay;
    })
    .map((row) => numberIn(row, "job"));
}
