import type { SlotRefusal } from "#shared/calendar/bookable.ts";
import type { ChangeRefusal } from "#shared/shop/booking.ts";

/** The pages on which the shop moves or cancels a booking or makes a new link. */
export const MOVE = {
  title: (number: string) => `Move job ${number}`,
  now: "Bench time now",
  from: "Show times from",
  fromHint: "Leave it empty for the soonest times.",
  show: "Show times",
  notADate: "Write a date that exists, such as 2027-05-31.",
  pick: "Pick a bench time",
  postBy: (date: string) => `Post the unit by ${date}.`,
  none: "No bench time is free within a year. Look at the opening hours and closures in the settings.",
  button: "Move the job",
  keep: "Keep the time it has",
  /** Whom a new time concerns, since no message is sent. */
  affects: (name: string) => `${name} was told the bench time above. If you change it, tell ${name} the new one:`,
  affectsNobody: "A time that is free moves no other job.",
} as const;

/** Said on top of the free times, right after a parcel was received that came at another time than was booked. */
export const RECEIVED_OFF_TIME = {
  late: "Received. It came late: the bench time that was booked has begun or is over. Give it a new one.",
  early: "Received. It came early: it can go on a bench before the time that was booked.",
} as const;
export type OffTime = keyof typeof RECEIVED_OFF_TIME;

export const CANCEL = {
  title: (number: string) => `Cancel job ${number}?`,
  says: "The bench time goes free at once. This cannot be undone, but you can book the job again.",
  button: "Yes, cancel it",
} as const;

export const NEW_LINK = {
  title: (number: string) => `New link for job ${number}`,
  says: "The owner's link so far stops working at once, on every device. Do this when the link was lost or went to the wrong person.",
  button: "Make the new link",
  madeTitle: (number: string) => `The owner's link to job ${number}`,
  made: "Copy it now and give it to the owner. It is shown here for 10 minutes, to you alone. The shop keeps no copy.",
  label: "Owner's link",
  open: "Open the job tag, to print it",
  gone: "This page has ended, or a newer link was made. Make a new link if the owner still needs one.",
  changedMeanwhile: "A new link was made meanwhile. The one shown then is the one that works.",
} as const;

export const BACK_TO_JOB = (number: string): string => `Back to job ${number}`;

export const CHANGE_REFUSED: Readonly<Record<ChangeRefusal["reason"], string>> = {
  "no-such-booking": "That booking no longer exists.",
  "already-cancelled": "That booking was cancelled meanwhile.",
  "too-late": "It is too late to change that booking.",
  "unit-here":
    "The unit is here, or was. The booking cannot be cancelled now, and the bench time only moved while there is work to come.",
  "slot-not-offered": "That time cannot be taken.",
};

/** Why a bench time cannot be taken, said to the shop. */
export const SLOT_REFUSED: Readonly<Record<SlotRefusal, string>> = {
  "not-a-slot": "Choose one of the times.",
  "no-such-bench": "That bench is no longer in the settings.",
  "in-the-past": "That time has passed.",
  "too-far-ahead": "That time is more than a year ahead.",
  closed: "The shop is closed for part of that time.",
  "before-arrival": "A unit posted today would not be there by then.",
  taken: "That time was taken meanwhile. These are the nearest free ones.",
};
