import type { JobNumberRefusal } from "#shared/shop/job-number.ts";

export const ARRIVALS = {
  title: "Arrivals",
  none: "Nothing is booked yet. Jobs show up here as soon as an owner has confirmed a time, or you have booked for a caller.",
  job: "Job",
  work: "Work",
  owner: "Owner",
  slot: "Bench time",
  bench: "Bench",
  postBy: "Post by",
  state: "State",
} as const;

export const ARRIVAL_GROUP = {
  urgent: "Urgent: do not ride",
  "this-week": "This week",
  "next-week": "Next week",
  later: "Later",
  "slot-passed": "Bench time has passed",
  cancelled: "Cancelled",
} as const;

export const FIND_JOB = {
  label: "Find a job by its number",
  hint: "As printed on the job tag. Capital or small letters, with or without hyphens.",
  button: "Find",
} as const;

/** Why no job is found by what was typed. */
export const FIND_JOB_PROBLEM: Readonly<Record<JobNumberRefusal["reason"] | "no-such-job", string>> = {
  "not-a-job-number": "That is not a job number. It has 2 to 9 letters and digits, such as 16JD.",
  "check-symbol-wrong":
    "The last sign does not fit the ones before it, so one of them is wrong. Compare it with the tag.",
  "no-such-job": "No job has that number.",
};
