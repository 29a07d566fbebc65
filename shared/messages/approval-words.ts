import type { ApprovalState } from "#shared/job/approval.ts";
import type { AnswerRefusal, WordRefusal } from "#shared/job/approval-wish.ts";

/** The page on which an owner decides about more work. */
export const APPROVAL = {
  title: "Your answer is needed",
  closedTitle: "What the shop asked",
  none: "Nothing is asked of you now.",
  lead: (shop: string): string => `${shop} has looked at your unit and asks you about more work.`,
  what: "Work",
  price: "Price",
  instead: "Instead of what was agreed",
  answerBy: "Answer by",
  why: "Why",
  photo: "Photo from the bench",
  choose: "Your choice",
  yes: (price: string): string => `Yes, do it for ${price}`,
  yesHow: "The bench goes on at once. You pay this price and no more without being asked again.",
  no: "No, leave it",
  noHow: (work: string): string =>
    `The work stays as agreed: ${work}. If that makes no sense any more, the shop sends the unit back unrepaired and tells you.`,
  ask: "Ask a question first",
  askLabel: "Your question",
  askButton: "Send the question",
  askHow: "The shop answers here. Look again later: no message is sent yet. The time to answer runs on.",
  talk: "Questions and answers",
  you: "You",
  asked: (when: string): string => `Asked ${when}`,
  backToTag: "Back to your job",
  print: "Print this",
  sendWord: "Send",
  moreWords: "Write to the shop about this",
  empty: "Please write your question first.",
  tooLong: (most: number): string => `Please use at most ${most} characters. What you wrote is still here.`,
} as const;

/** How a question to the owner ended, said to the owner. */
export const APPROVAL_ENDED: Readonly<Record<Exclude<ApprovalState, "open">, string>> = {
  approved: "You said yes. The bench goes on.",
  declined: "You said no. The work stays as agreed.",
  withdrawn: "The shop took this question back. You need not answer.",
  expired: "The time to answer is over. The work stays as agreed.",
};

/** Where the shop went ahead within the limit that the owner gave at the booking. */
export const WENT_AHEAD = (limit: string): string =>
  `You let the shop go ahead without asking up to ${limit}. This is within it, so it was done at once.`;

/** Said once, after it was done. */
export const APPROVAL_DONE = {
  approved: "Your yes is kept. Thank you.",
  declined: "Your no is kept. Thank you.",
  asked: "Your question is sent.",
} as const;
export type ApprovalDone = keyof typeof APPROVAL_DONE;

/** Why an answer changed nothing any more. */
export function tooLateWords({ state }: Extract<AnswerRefusal, { readonly reason: "closed" }>, phone: string): string {
  const call = `What you chose now changed nothing, but the shop can read it. To change something, call ${phone}.`;
  return `${APPROVAL_ENDED[state]} ${call}`;
}

export const wordRefusedText = ({ reason }: WordRefusal, phone: string): string =>
  reason === "too-many-words"
    ? `That is more than this page holds. What you wrote is still below. Please call ${phone}.`
    : `This question is not yours to answer. Please call ${phone}.`;

/** On the job tag, first of all. */
export const ASKED_ON_TAG = {
  title: "The shop needs your answer",
  says: (work: string, price: string): string => `${work}: ${price}.`,
  until: (when: string): string => `Answer by ${when}.`,
  link: "Read and decide",
  past: "What the shop asked, and what was said",
} as const;
