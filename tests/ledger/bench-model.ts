import { DAY, MINUTE } from "#tests/ledger/a-ledger.ts";

const QUARTER = 15 * MINUTE;

export type ModelHold = {
  readonly id: string;
  readonly until: number;
  readonly long: boolean;
  readonly quarters: readonly string[];
  state: "open" | "booked";
};
export type ModelBooking = {
  readonly id: string;
  readonly linkHash: string;
  readonly long: boolean;
  startsAt: number;
  quarters: readonly string[];
  state: "booked" | "cancelled";
};

/** A bench calendar kept by hand: who has which quarter-hour. It knows nothing of spans, keys or transactions. */
export class BenchModel {
  now: number;
  readonly taken = new Map<string, string>();
  readonly holds: ModelHold[] = [];
  readonly bookings: ModelBooking[] = [];

  constructor(now: number) {
    this.now = now;
  }

  pass(ms: number) {
    this.now += ms;
    for (const hold of this.holds) if (hold.state === "open" && hold.until <= this.now) this.free(hold.id);
  }

  take(quarters: readonly string[], by: string) {
    for (const quarter of quarters) this.taken.set(quarter, by);
  }

  free(by: string) {
    for (const [quarter, holder] of this.taken) if (holder === by) this.taken.delete(quarter);
  }

  isFree = (quarters: readonly string[], butFor?: string) =>
    quarters.every((quarter) => [undefined, butFor].includes(this.taken.get(quarter)));
}

/** The quarter-hours of a job: an hour, or four for a long one. @example quartersOf("b1", 0, false)[1] // "b1 1" */
export const quartersOf = (bench: string, startsAt: number, long: boolean): readonly string[] =>
  Array.from({ length: long ? 16 : 4 }, (_, count) => `${bench} ${startsAt / QUARTER + count}`);

/** Worked on Monday to Friday, eight to five in New York: UTC-4 in May. */
export function isWorked(startsAt: number, long: boolean): boolean {
  const eight = Math.floor(startsAt / DAY) * DAY + 12 * 4 * QUARTER;
  const weekday = new Date(startsAt).getUTCDay();
  return (
    weekday >= 1 && weekday <= 5 && startsAt >= eight && startsAt + (long ? 16 : 4) * QUARTER <= eight + 36 * QUARTER
  );
}

/** The same time on the working day before. */
export const deadlineOf = (startsAt: number): number => startsAt - (new Date(startsAt).getUTCDay() === 1 ? 3 : 1) * DAY;
