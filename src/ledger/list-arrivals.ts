import { isUrgent } from "#shared/calendar/bench-job.ts";
import { quantumAt } from "#shared/calendar/quantum.ts";
import type { Arrival } from "#shared/shop/booking.ts";
import { arrivalsSince } from "#src/ledger/booking-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** How long a job stays on the list after its bench time; default of this project. */
const RECENT_MS = 14 * 86_400_000;

/** What is on its way to the shop, before what was cancelled lately; urgent first. */
export const listArrivals = ({ sql, now }: Turn): readonly Arrival[] =>
  arrivalsSince(sql, quantumAt(now - RECENT_MS)).toSorted(
    (one, other) =>
      rank(one) - rank(other) ||
      one.time.startsAt - other.time.startsAt ||
      one.time.bench.localeCompare(other.time.bench),
  );

const rank = ({ state, verdict }: Arrival): number => (state === "cancelled" ? 2 : isUrgent(verdict) ? 0 : 1);
