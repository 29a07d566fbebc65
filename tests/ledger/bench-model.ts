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
  readonly number: string;
  /** The hold that it was made of. */
  readonly claim: string;
  readonly linkHash: string;
  readonly long: boolean;
  startsAt: number;
  quarters: readonly string[];
  state: string;
  /** The buttons pressed so far that nobody took back, each with the state it left. */
  readonly pressed: { readonly left: string }[];
};

/** What each button does, written down by hand; the sheet of every job is complete, so that each can be pressed. */
const BUTTONS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  booked: { receive: "received" },
  received: { start: "on-bench", "set-aside": "set-aside", return: "returned-unrepaired" },
  "on-bench": {
    "await-part": "part-to-come",
    finish: "set",
    "set-aside": "set-aside",
    return: "returned-unrepaired",
  },
  "part-to-come": { "part-came": "on-bench", "set-aside": "set-aside", return: "returned-unrepaired" },
  set: { reopen: "on-bench", ship: "shipped" },
  "set-aside": { "take-up": "on-bench", return: "returned-unrepaired" },
  shipped: { close: "closed" },
  "returned-unrepaired": { close: "closed" },
};
export const buttonsIn = (state: string): readonly string[] => Object.keys(BUTTONS[state] ?? {});
export const pressedIn = (state: string, button: string): string => BUTTONS[state]?.[button] ?? state;

const NEEDS_NO_BENCH = ["set-aside", "shipped", "returned-unrepaired", "closed", "cancelled"];
/** In which states the shop may still give a job another time. */
export const MOVABLE = ["booked", "received", "on-bench", "part-to-come"];

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

  /** A job comes into a state: what has not begun of its time is given up, or taken back where all of it is free. */
  enter(booking: ModelBooking, state: string) {
    booking.state = state;
    const mine = (quarter: string) => this.taken.get(quarter) === booking.claim;
    if (NEEDS_NO_BENCH.includes(state)) {
      for (const quarter of booking.quarters)
        if (mine(quarter) && startOf(quarter) >= this.now) this.taken.delete(quarter);
      return;
    }
    const gone = booking.quarters.filter((quarter) => !mine(quarter));
    const last = booking.quarters.at(-1) ?? "";
    const isOver = startOf(last) + QUARTER <= this.now;
    if (!isOver && gone.every((quarter) => !this.taken.has(quarter))) this.take(gone, booking.claim);
  }

  /** Is any of its time with others, or with nobody? */
  hasAllTime = ({ quarters, claim }: ModelBooking) => quarters.every((quarter) => this.taken.get(quarter) === claim);

  isFree = (quarters: readonly string[], butFor?: string) =>
    quarters.every((quarter) => [undefined, butFor].includes(this.taken.get(quarter)));
}

const startOf = (quarter: string): number => Number(quarter.split(" ")[1]) * QUARTER;

/** The quarter-hours of a job: an hour, or four for a long one. @example quartersOf({ bench: "b1", startsAt: 0 }, false)[1] // "b1 1" */
export const quartersOf = (
  { bench, startsAt }: { readonly bench: string; readonly startsAt: number },
  long: boolean,
): readonly string[] => Array.from({ length: long ? 16 : 4 }, (_, count) => `${bench} ${startsAt / QUARTER + count}`);

/** Worked on Monday to Friday, eight to five in New York: UTC-4 in May. */
function isWorked(startsAt: number, long: boolean): boolean {
  const eight = Math.floor(startsAt / DAY) * DAY + 12 * 4 * QUARTER;
  const weekday = new Date(startsAt).getUTCDay();
  return (
    weekday >= 1 && weekday <= 5 && startsAt >= eight && startsAt + (long ? 16 : 4) * QUARTER <= eight + 36 * QUARTER
  );
}

/** Why a job may not start then, or null: the calendar's answer, worked out by counting. */
export function whyNot(
  model: BenchModel,
  { bench, startsAt, long }: { readonly bench: string; readonly startsAt: number; readonly long: boolean },
  { butFor, isHere = false }: { readonly butFor?: string; readonly isHere?: boolean } = {},
): string | null {
  if (startsAt < model.now) return "in-the-past";
  if (!isWorked(startsAt, long)) return "closed";
  if (!isHere && startsAt < arrivalOf(model.now)) return "before-arrival";
  return model.isFree(quartersOf({ bench, startsAt }, long), butFor) ? null : "taken";
}

/** Midnight in New York of the day on which a unit that is posted now has come: four working days later. */
function arrivalOf(now: number): number {
  let day = Math.floor((now - 4 * 4 * QUARTER) / DAY);
  for (let left = 4; left > 0 || isWeekend(day); day += 1) if (!isWeekend(day)) left -= 1;
  return day * DAY + 4 * 4 * QUARTER;
}

const isWeekend = (day: number) => [0, 6].includes(new Date(day * DAY).getUTCDay());

/** The same time on the working day before. */
export const deadlineOf = (startsAt: number): number => startsAt - (new Date(startsAt).getUTCDay() === 1 ? 3 : 1) * DAY;
