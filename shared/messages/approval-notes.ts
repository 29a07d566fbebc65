import type { ApprovalAnswer } from "#shared/job/approval-wish.ts";

/** What stands beside a line of the job's history. */
export const HISTORY_NOTES = {
  goAhead: (limit: string): string => `Without asking: within the owner's “go ahead up to ${limit}”`,
  asBooked: "Declined: the work stays as first agreed",
  asAgreed: "Declined: the work stays as agreed last",
  noAnswer: "No answer in time: the work stays as agreed",
} as const;

/** An answer that came after the question was closed, kept for the shop to read. */
export const LATE_ANSWER: Readonly<Record<ApprovalAnswer, string>> = {
  approve: "“Yes, go ahead”, sent after this was closed. It changed nothing.",
  decline: "“No, leave it”, sent after this was closed. It changed nothing.",
};
