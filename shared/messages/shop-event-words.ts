import type { JobEventName } from "#shared/job/job-event-name.ts";
import { SHEET_STEPS } from "#shared/job/sheet-entry.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import type { JobEvent } from "#shared/shop/booking.ts";

const EVENTS: Readonly<Record<JobEventName | "booked", string>> = {
  booked: "Booked",
  moved: "Moved to another time",
  cancelled: "Cancelled",
  "link-reissued": "New link made for the owner",
  "zone-law-moved": "Clock law changed: same time on the wall, new instant",
  undone: "Last move taken back",

  receive: "Received",
  start: "Put on the bench",
  "ask-owner": "Waiting for the owner to decide",
  "owner-answered": "Back on the bench: the owner need not decide any more",
  "await-part": "Waiting for a part",
  "part-came": "The part has come: back on the bench",
  finish: "Set, ready to ship",
  reopen: "Opened again: back on the bench",
  ship: "Shipped",
  "set-aside": "Set aside",
  "take-up": "Taken up again: back on the bench",
  return: "Returned unrepaired",
  close: "Closed",

  "sheet-written": "Bench sheet written",
  "photo-added": "Photo added",
  "photo-removed": "Photo removed",
  "part-added": "Part laid out besides",
  "part-put-away": "Part put away again",
  "part-used": "Part used",
  "part-use-undone": "Use of a part taken back",

  "approval-asked": "Asked the owner about more work",
  "approval-withdrawn": "Question to the owner withdrawn",
  "approval-expired": "Question to the owner ended without an answer",
  "owner-approved": "Approved the work",
  "owner-declined": "Declined the work",
  "owner-asked": "Asked back about the work",
  "shop-replied": "Answered the owner",
  "work-upgraded": "Work of the job changed",

  "record-made": "Service record made",
  "record-corrected": "Service record corrected",
  "record-withdrawn": "Service record withdrawn",
};

/** What happened to a job, as its history says it; the event's own name where it has no words. */
export const eventText = (what: string): string => (Object.hasOwn(EVENTS, what) ? EVENTS[what as JobEventName] : what);

/** What was said with it. Of a step of the bench sheet, the history keeps the id. */
export function eventNote({ what, note }: Pick<JobEvent, "what" | "note">): string | null {
  const step = what === "sheet-written" ? SHEET_STEPS.find((known) => known === note) : undefined;
  return step === undefined ? note : STEP_WORDS[step].title;
}
