/** Headings, labels and sentences of the job's page. */
export const JOB = {
  title: (number: string) => `Job ${number}`,
  verdict: "Verdict",
  state: "State",
  work: "Work",
  slot: "Bench time",
  bench: "Bench",
  postBy: "Owner posts it by",
  bookedAt: "Booked",
  settingsVersion: "Judged by settings",
  version: (version: number) => `Version ${version}`,

  owner: "Owner",
  name: "Name",
  phone: "Phone",
  email: "Email",

  return: "Return",
  returnTo: "Send it back to",
  collects: "The owner collects it",
  serial: "Serial number",
  noSerial: "Not given",

  money: "Price",
  priceShown: "Owner was told",
  priceAgreed: "Approved since",
  goAhead: "Go ahead up to",
  noGoAhead: "Not said: ask before any work over the price",
  usualDays: "Usual time here",
  days: (days: number) => (days === 1 ? "1 working day" : `${days} working days`),

  answers: "What the owner said",
  reasons: "Why this verdict",
  advice: "What the owner was told besides",
  source: (source: string) => `Source: ${source}.`,

  suspects: "What may have failed",
  suspectsHint: "What the symptoms point to. A hint for the bench, not a finding.",
  noSuspects: "No symptom was named, so nothing points to a failed part.",
  failure: "Failure",
  pointedToBy: "Pointed to by",
  inEngine: "Debris in the engine?",

  debris: "Parts in the engine",

  slip: "Slip to set",
  target: "Final slip",
  noTarget: "No target yet: see the notices below",
  torque: (lbfft: number, newtonMetres: number | undefined) =>
    newtonMetres === undefined ? `${lbfft} lbf·ft` : `${lbfft} lbf·ft (${newtonMetres.toFixed(1)} N·m)`,
  band: "May end between",
  bandText: (low: number, high: number) => `${low} and ${high} lbf·ft`,
  setBeforeLock: "Before the lock nut",
  noSetBeforeLock: "Not given for this unit",
  basis: "Where the slip comes from",
  /** The signal word after ANSI Z535.6 where a part, not a person, may come to harm. */
  notice: "NOTICE",

  history: "History",
  when: "When",
  who: "Who",
  what: "What",
  note: "Note",
} as const;

export const WHO: Readonly<Record<"owner" | "shop", string>> = { owner: "Owner", shop: "Shop" };

/** What can be done with a job, on the buttons. */
export const JOB_ACTIONS = {
  move: "Move to another time",
  cancel: "Cancel this booking",
  link: "Make a new link for the owner",
} as const;

/** Said once, after it was done. */
export const JOB_DONE = {
  undone: "The last move was taken back.",
  moved: "Moved. The owner's page shows the new time. Tell the owner, since no message is sent.",
  cancelled: "Cancelled. The bench time is free again. Tell the owner, since no message is sent.",
  "part-used": "Used.",
  "part-short": "Used. The book knows of fewer than that, so count the shelf again.",
  "part-back": "Back on the shelf.",
  "part-added": "Laid out.",
  "part-put-away": "Put away.",
} as const;
export type JobDone = keyof typeof JOB_DONE;

export const NO_SUCH_JOB = {
  title: "No such job",
  says: "No job has that number.",
  back: "Back to today",
} as const;
