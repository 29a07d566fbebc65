import { unreachable } from "#shared/basics/unreachable.ts";
import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { BookedTime } from "#shared/shop/booking.ts";
import type { JobState } from "#shared/shop/job-state.ts";

/** A job that is not over, as the day sheet shows it. */
export type DayJob = {
  readonly number: string;
  readonly state: JobState;
  /** The work that it is about now. */
  readonly work: BenchJob;
  readonly ownerName: string;
  readonly time: BookedTime;
  readonly keepsTime: boolean;
  /** More work was agreed than its time holds. */
  readonly needsBenchTime: boolean;
  /** What was said last about more work was said by the owner: the shop's answer is due. */
  readonly ownerAsks: boolean;
  /** When it came into its state. */
  readonly since: number;
  /** What was said with the move that brought it there. */
  readonly note: string | null;
};

/** The parts of the day sheet under the benches, in the order in which they are shown. */
export const DAY_GROUPS = [
  "late",
  "on-bench",
  "received",
  "owner-to-decide",
  "part-to-come",
  "set",
  "set-aside",
  "to-close",
  "arriving",
] as const;
export type DayGroup = (typeof DAY_GROUPS)[number];

/** Units whose bench time begins within so many days are shown as arriving; default of this project. */
export const ARRIVING_DAYS = 7;

/** Where a job stands on the day sheet; null = it is over. A booked unit is late once its bench time has begun. */
function dayGroupOf({ state, time }: DayJob, now: number): DayGroup | null {
  switch (state) {
    case "booked":
      return time.startsAt <= now ? "late" : "arriving";
    case "shipped":
    case "returned-unrepaired":
      return "to-close";
    case "cancelled":
    case "closed":
      return null;
    case "received":
    case "on-bench":
    case "owner-to-decide":
    case "part-to-come":
    case "set":
    case "set-aside":
      return state;
    default:
      return unreachable(state);
  }
}

/** What stands on the benches on a day, in the order of its hours; a job without time of its own is nowhere. */
export const onBenches = (jobs: readonly DayJob[], date: string): readonly DayJob[] =>
  jobs.filter(({ time, keepsTime }) => keepsTime && time.date === date).toSorted(byTime);

/** The jobs of a part of the day sheet: what is to come by its bench time, everything else by who has waited longest. */
export function jobsOfGroup(jobs: readonly DayJob[], group: DayGroup, now: number): readonly DayJob[] {
  const some = jobs.filter((job) => dayGroupOf(job, now) === group);
  return some.toSorted(group === "late" || group === "arriving" ? byTime : (one, other) => one.since - other.since);
}

const byTime = (one: DayJob, other: DayJob): number =>
  one.time.startsAt - other.time.startsAt || one.time.bench.localeCompare(other.time.bench);
