import { unreachable } from "#shared/basics/unreachable.ts";
import type { ApprovalCloser, ApprovalState } from "#shared/job/approval.ts";
import type { AnswerRefusal, AskRefusal, WordRefusal } from "#shared/job/approval-wish.ts";
import { SHOP_JOB_STATE } from "#shared/messages/shop-words.ts";

/** The page on which the shop asks an owner for more work. */
export const ASKING = {
  title: (number: string): string => `Ask the owner of job ${number}`,
  open: "Ask the owner for more work",
  openQuestion: "See the question to the owner",
  notNow: "The owner can be asked while the unit is on the bench.",
  findings: "What the sheet says so far",
  needs: "It needs",
  asAgreed: "Agreed so far",
  ask: "What to ask",
  work: "Work",
  workAt: (work: string, price: string, minutes: number): string => `${work}: ${price}, ${minutes} min on the bench`,
  price: (currency: string): string => `Another price, ${currency}`,
  priceHint: "Leave it empty for the price beside the work.",
  why: "Why, in words that the owner reads",
  photo: "Photo to show",
  noPhoto: "No photo",
  until: "Answer by, end of this day",
  button: "Ask the owner",
  noMessage: "No message is sent yet. Tell the owner to open the job's link.",
  within: (limit: string): string => `The owner said: go ahead without asking up to ${limit}.`,
  goAhead: "Go ahead without asking",
  mend: (count: number): string => (count === 1 ? "One thing to mend" : `${count} things to mend`),
  mendHow: "Nothing was asked yet. What you typed is still here.",
  past: "What was asked",
  askedBy: (who: string, when: string): string => `Asked by ${who}, ${when}`,
  until_: "Answer by",
  talk: "Questions and answers",
  owner: "Owner",
  reply: "Write to the owner",
  replyButton: "Send the answer",
  withdraw: "Take the question back",
  withdrawHow: "The job goes back on the bench, and the owner need not answer any more.",
  ownerAsks: "The owner has asked something.",
} as const;

export const ASKED_STATE: Readonly<Record<ApprovalState, string>> = {
  open: "Waiting for the owner",
  approved: "Approved",
  declined: "Declined",
  withdrawn: "Taken back",
  expired: "No answer in time",
};

export const CLOSED_BY: Readonly<Record<ApprovalCloser, string>> = {
  owner: "by the owner",
  "go-ahead": "without asking, within the owner's limit",
  shop: "by the shop",
  time: "by its time",
};

/** What is accepted, by field. */
export const ASK_PROBLEMS = {
  work: "Pick the work.",
  price: "A price in digits, as 425.00; or nothing.",
  why: (most: number): string => `Say why, in at most ${most} characters.`,
  until: "A day from today on, within 90 days.",
  reply: (most: number): string => `Write your answer, in at most ${most} characters.`,
  photo: "That photo is not there any more. Pick another, or none.",
} as const;

export const ASK_DONE = {
  asked: "Asked. The owner's page shows the question. Tell the owner, since no message is sent.",
  "went-ahead": "Done. The job has the new work, and its history says why nobody was asked.",
  replied: "Sent. The owner's page shows your answer.",
  withdrawn: "Taken back. The job is on the bench again.",
} as const;
export type AskDone = keyof typeof ASK_DONE;

/** Why nothing was asked, where no field is to blame. */
export function askRefusedText(
  refusal: Exclude<AskRefusal, { readonly reason: "no-such-photo" | "not-a-day" }>,
): string {
  switch (refusal.reason) {
    case "no-such-job":
      return "This job is not there any more.";
    case "not-on-bench":
      return `Nothing was asked. The job is not on the bench now: ${SHOP_JOB_STATE[refusal.state].toLowerCase()}.`;
    case "currency-changed":
    case "not-the-list-price":
      return "The shop's prices have changed meanwhile. Look at the new ones below. What you typed is still here.";
    case "over-go-ahead":
      return "That price is over what the owner said. Ask the owner.";
    default:
      return unreachable(refusal);
  }
}

export function closedText(refusal: AnswerRefusal): string {
  return refusal.reason === "closed"
    ? `That question is over: ${ASKED_STATE[refusal.state].toLowerCase()}.`
    : "That question is not about this job.";
}

export const replyRefusedText = ({ reason }: WordRefusal): string =>
  reason === "too-many-words"
    ? "That is more than this page holds. Call the owner. What you typed is still below."
    : "That question is not about this job.";
