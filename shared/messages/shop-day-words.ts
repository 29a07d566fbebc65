import type { DayGroup } from "#shared/job/day-sheet.ts";

/** The day sheet: the shop's first page. */
export const DAY = {
  title: "Today",
  benches: "Bench time today",
  noBenches: "No bench time is booked for today.",
  nothing:
    "Nothing is in the shop and nothing is expected within a week. Jobs show up here when an owner books, or when you receive a unit.",
  receive: "Receive a unit",
  since: (time: string) => `since ${time}`,
  noTime: "no bench time",
  ownerAsks: "The owner has said something: read it and answer",
  openJob: (number: string) => `Open job ${number}`,
  done: (number: string, done: string) => `Job ${number}: ${done}`,
} as const;

export const DAY_GROUP: Readonly<Record<DayGroup, string>> = {
  late: "Late: bench time has begun, unit not here",
  "on-bench": "On the bench",
  received: "Received, to be put on the bench",
  "owner-to-decide": "Owner to decide",
  "part-to-come": "Part to come",
  set: "Set, to ship",
  "set-aside": "Set aside",
  "to-close": "Sent back, to close",
  arriving: "Arriving within a week",
};

/** The one next step of a job, where it is a page to open and not a move to make. */
export const NEXT_PAGE = {
  receive: "Receive it",
  openSheet: "Bench sheet",
  question: "See the question",
  ship: "Pack and ship",
} as const;
