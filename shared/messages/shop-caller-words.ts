import { CONTACT_WORDS } from "#shared/messages/contact-words.ts";

/** Booking for somebody on the phone. The questions are put as owners read them, so that they can be read aloud. */
export const CALLER = {
  title: "Book for a caller",
  how: "Read the questions out. What is left at “Not sure”, or empty, is taken as the worst likely case. A field that does not apply is passed over.",
  known: "Known?",
  next: "Show the verdict",
  mend: (count: number) => (count === 1 ? "1 answer needs another look" : `${count} answers need another look`),
  kept: "Nothing you typed is lost.",
  symptomsNeeded: "Tick what the caller noticed, or that there is nothing.",
  tooMany: "Too many conversations are open. Nothing was kept. Try again later.",

  gone: "This call has ended",
  goneSays: "What was typed for this caller is kept for 14 days. Start again.",
  startAgain: "Start again",

  verdictTitle: "Tell the caller",
  cautions: "Cautions to read out",
  price: "Price",
  usualDays: "Usual time here",
  askAgain: "One of these answers could make it milder. Ask once more:",
  atBest: (verdict: string) => `at best ${verdict.toLowerCase()}`,
  change: "Change the answers",
  hold: "Hold this time",

  contactTitle: "Who is calling?",
  held: "Held",
  heldUntil: "Held until",
  otherTime: "Pick another time",
  oneOf: "A phone number or an email address: one is enough.",
  goAheadHelp: "Leave it empty where the caller wants to be asked before any work over the price.",
  book: "Book it",
} as const;

/** The same pages, where the unit came before anybody booked it. */
export const UNIT_HERE = {
  title: "Book in a unit that is here",
  how: "Fill in what you know. What is left at “Not sure”, or empty, is taken as the worst likely case. A field that does not apply is passed over.",
  contactTitle: "Whose unit is it?",
} as const;

/** What the fields of the contact form are called where the shop fills it in for somebody else. */
export const CALLER_CONTACT = {
  ...CONTACT_WORDS.labels,
  name: "Name",
  collect: "The owner collects the unit",
  goAhead: "Go ahead without asking, up to",
} as const;

/** Why a time was not held or booked. */
export const CALLER_REFUSED = {
  "too-many-holds": "You hold as many times as one device may. Book one, or wait until one has ended.",
  "key-reused": "This form was sent before with other entries. Look at them once more and send it again.",
  "no-such-hold": "That time is no longer held. Pick another.",
  "already-booked": "That time is booked already; the job is on the list of arrivals. Nothing was booked twice.",
  "hold-ended": "The time was held too long ago and is free again. Pick another.",
  "needs-more-time": "By these answers the job needs more bench time than was held. Pick another time.",
  "not-urgent": "By these answers the job is not urgent, and the unit could not be here by then. Pick another time.",
  "price-changed": "The price was changed meanwhile. Tell the caller the new one before you book.",
  "answers-ahead": "A date or a year in the answers is still to come. Change that answer.",
} as const;
