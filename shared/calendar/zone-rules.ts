import * as Instant from "temporal-polyfill/fns/Instant";
import * as ZonedDateTime from "temporal-polyfill/fns/ZonedDateTime";

/*
 * The only file that asks a time-zone database, so that the runtime's own Temporal can take its place.
 * Its functions are imported, never the guarded entry: a runtime has shown a half-finished Temporal before.
 */

/** A stretch of time, half-open, in which a zone keeps one offset from UTC. */
export type OffsetPeriod = { readonly from: number; readonly until: number; readonly offsetMs: number };

/** Wide enough for any offset there is, so that every wall time of a year falls into that year's table. */
const MARGIN_MS = 2 * 86_400_000;
/** A year's table costs a millisecond or more to find and a few numbers to keep. */
const MOST_TABLES = 64;
const tables = new Map<string, readonly OffsetPeriod[]>();

/** Is it an IANA zone, written the way the database writes it? Asked of the runtime, which alone knows its own list. */
export function isZone(text: string): boolean {
  if (!/^[A-Za-z]/.test(text)) return false;
  try {
    return Instant.toZonedDateTimeISO(Instant.fromEpochMilliseconds(0), text).timeZoneId === text;
  } catch {
    return false;
  }
}

/** A zone's offsets in a calendar year, in order; the first reaches back and the last reaches on without end. */
export function offsetPeriods(zone: string, year: number): readonly OffsetPeriod[] {
  const key = `${zone} ${year}`;
  const known = tables.get(key);
  if (known !== undefined) return known;
  const [oldest] = tables.keys();
  if (tables.size >= MOST_TABLES && oldest !== undefined) tables.delete(oldest);
  const found = findPeriods(zone, Date.UTC(year, 0, 1) - MARGIN_MS, Date.UTC(year + 1, 0, 1) + MARGIN_MS);
  tables.set(key, found);
  return found;
}

function findPeriods(zone: string, start: number, end: number): readonly OffsetPeriod[] {
  const periods: OffsetPeriod[] = [];
  let at = Instant.toZonedDateTimeISO(Instant.fromEpochMilliseconds(start), zone);
  let from = Number.NEGATIVE_INFINITY;
  for (;;) {
    const offsetMs = ZonedDateTime.offsetNanoseconds(at) / 1_000_000;
    const next = ZonedDateTime.getTimeZoneTransition(at, "next");
    if (next === null || next.epochMilliseconds >= end) {
      periods.push({ from, until: Number.POSITIVE_INFINITY, offsetMs });
      return periods;
    }
    periods.push({ from, until: next.epochMilliseconds, offsetMs });
    from = next.epochMilliseconds;
    at = next;
  }
}
