import type { Job } from "#shared/shop/booking.ts";
import type { JobState } from "#shared/shop/job-state.ts";

export const STANDING = {
  title: "Where your job stands",
  since: (when: string): string => `Since ${when}.`,
  facts: "What is agreed",
  takeItUp: (phone: string): string => `Questions? Call ${phone}.`,
} as const;

type Standing = { readonly title: string; readonly says: string };

const WHERE: Readonly<Record<Exclude<JobState, "booked" | "cancelled">, Standing>> = {
  received: { title: "Received", says: "Your unit is at the shop and waits for its bench time." },
  "on-bench": { title: "On the bench", says: "Somebody works on your unit." },
  "owner-to-decide": { title: "Waiting for your answer", says: "The bench goes on as soon as you decide." },
  "part-to-come": { title: "Waiting for a part", says: "The bench goes on as soon as the part is there." },
  set: { title: "Set", says: "The work on the bench is done. Your unit leaves next." },
  "set-aside": { title: "Set aside", says: "Your unit lies safe at the shop. Nobody works on it now." },
  shipped: {
    title: "On its way back",
    says: "Your unit has left the shop. Follow the maker's manual when you refit it.",
  },
  "returned-unrepaired": {
    title: "On its way back, not repaired",
    says: "Your unit has left the shop as it came. Do not ride with it before it is repaired.",
  },
  closed: { title: "Closed", says: "The job is over." },
};

const COLLECTED: Readonly<Partial<Record<JobState, Standing>>> = {
  set: { title: "Set", says: "The work on the bench is done. You can collect your unit." },
  shipped: { title: "Handed over", says: "You have your unit back. Follow the maker's manual when you refit it." },
  "returned-unrepaired": {
    title: "Handed over, not repaired",
    says: "You have your unit back as it came. Do not ride with it before it is repaired.",
  },
};

/** Where a job stands once its unit was on the way, in the owner's words; null before that, and where it was cancelled. */
export function standingWords({ state, returnTo }: Pick<Job, "state" | "returnTo">): Standing | null {
  if (state === "booked" || state === "cancelled") return null;
  return ("collect" in returnTo ? COLLECTED[state] : undefined) ?? WHERE[state];
}
