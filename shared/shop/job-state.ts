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

/** Nothing more is to be done. */
export const OVER: readonly JobState[] = ["cancelled", "closed"];
