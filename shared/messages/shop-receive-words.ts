import type { JobNumberRefusal } from "#shared/shop/job-number.ts";

/** Taking a parcel in. */
export const RECEIVE = {
  title: "Receive a unit",
  how: "Scan the code on the job tag, or type the job number.",
  scan: "Scan the tag",
  stop: "Stop the camera",
  aim: "Hold the tag so that its code fills half of the picture.",
  noCamera: "The camera cannot be used here. Type the job number instead.",
  notATag: "That code is not on a job tag of this shop. Type the job number instead.",
  camera: "Picture of the camera",
  number: "Job number",
  numberHint: "As printed on the tag and written on the box.",
  find: "Show the job",
  didYouMean: "Two neighbours may be swapped. Did you mean:",
  noTag: "No tag, or never booked?",
  noTagHow: "Book the unit in. Leave open what you do not know: it is taken as the worst likely case.",
  bookIn: "Book in a unit that is here",

  parcelTitle: (number: string) => `Receive job ${number}`,
  booked: "Bench time",
  owner: "Owner",
  work: "Work",
  serial: "Serial number",
  parts: "Parts that this job needs",
  noParts: "None are listed for this job.",
  said: "What the owner said",
  remark: "Anything odd about the parcel? Leave it empty if not.",
  received: "Received",

  isLate: "Late: the bench time that was booked has begun or is over. Receive it, then pick a new one.",
  isEarly: "Early: it may go on a bench sooner. Receive it, then see the times.",
  isToday: "Its bench time is today.",

  cancelledTitle: (number: string) => `Job ${number} was cancelled`,
  cancelled: "Its unit has come all the same. Book it in again: what is known of the owner and the craft is filled in.",
  bookAgain: "Book it in again",
} as const;

/** Why what was typed or scanned leads to no job. */
export const RECEIVE_PROBLEM: Readonly<Record<JobNumberRefusal["reason"] | "no-such-job" | "other-site", string>> = {
  "not-a-job-number": "That is not a job number. It has 2 to 9 letters and digits, such as 16JD.",
  "check-symbol-wrong":
    "The last sign does not fit the ones before it, so one of them is wrong. Compare it with the tag.",
  "no-such-job": "The number is written right, but no job has it. Is the tag from another shop?",
  "other-site": "That code leads to another site. If the unit is for this shop, type the number on the tag.",
};
