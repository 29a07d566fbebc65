import { quantumAt } from "#shared/calendar/quantum.ts";
import { ARRIVING_DAYS, type DayJob } from "#shared/job/day-sheet.ts";
import { dayJobs } from "#src/ledger/day-sheet-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Everything that the shop has in hand or expects soon. */
export const daySheet = ({ sql, now }: Turn): readonly DayJob[] =>
  dayJobs(sql, quantumAt(now + (ARRIVING_DAYS + 1) * 86_400_000));
