/** Where a job stands between its booking and its end. */
export const JOB_STATES = [
  "booked",
  "cancelled",
  "received",
  "on-bench",
  "owner-to-decide",
  "part-to-come",
  "set",
  "set-aside",
  "shipped",
  "returned-unrepaired",
  "closed",
] as const;
export type JobState = (typeof JOB_STATES)[number];

/** The unit is in the shop's hands. */
export const IN_THE_SHOP: readonly JobState[] = [
  "received",
  "on-bench",
  "owner-to-decide",
  "part-to-come",
  "set",
  "set-aside",
];

/**
 * The job keeps its bench time. A unit that is set may be opened again, so it keeps the rest until it leaves. One that
 * is set aside may lie for weeks: its time goes to others, and is taken back with the unit where it is still free.
 */
export const NEEDS_BENCH: readonly JobState[] = [
  "booked",
  "received",
  "on-bench",
  "owner-to-decide",
  "part-to-come",
  "set",
];

/** Work on the bench is still to come, so another time for it makes sense. */
export const BENCH_TO_COME: readonly JobState[] = ["booked", "received", "on-bench", "owner-to-decide", "part-to-come"];

/** Nothing more is to be done. */
export const OVER: readonly JobState[] = ["cancelled", "closed"];
