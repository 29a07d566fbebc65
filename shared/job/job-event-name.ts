import type { JobMoveName } from "#shared/job/job-moves.ts";

/** What happened to a job after it was booked, in these words; the sentences for them live with the messages. */
export type JobEventName =
  | "moved"
  | "cancelled"
  | "link-reissued"
  | "zone-law-moved"
  | "undone"
  | Exclude<JobMoveName, "cancel">
  | "sheet-written"
  | "photo-added"
  | "photo-removed"
  | "part-used"
  | "part-use-undone"
  | "part-added"
  | "part-put-away"
  | "approval-asked"
  | "approval-withdrawn"
  | "approval-expired"
  | "owner-approved"
  | "owner-declined"
  | "owner-asked"
  | "shop-replied"
  | "work-upgraded"
  | "record-made"
  | "record-corrected"
  | "record-withdrawn";
