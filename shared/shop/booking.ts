import type { SlotRefusal } from "#shared/calendar/bookable.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { AnswerAhead } from "#shared/craft/answers-ahead.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import type { Draft } from "#shared/intake/draft.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";
import type { JobPlan } from "#shared/shop/job-plan.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import type { Contact, ReturnTo } from "#shared/shop/people.ts";
import type { Quote } from "#shared/shop/prices.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** Names one wish: asked again with the same key and the same fingerprint, it gets its first answer again. */
export type WishKey = {
  /** The route and who asks: keys of different callers never meet. */
  readonly scope: string;
  readonly key: string;
  /** SHA-256 of the request's body, hex. */
  readonly fingerprint: string;
};
export type KeyReused = { readonly reason: "key-reused" };

/** Answers that speak of a time after the shop's today. */
export type AnswersAhead = { readonly reason: "answers-ahead"; readonly ahead: readonly AnswerAhead[] };

/** A wish for bench time. The asker makes the id. */
export type HoldWish = {
  readonly id: string;
  readonly offer: string;
  /** As the asker says; where answers come along, they are judged instead. */
  readonly verdict: Verdict;
  readonly answers: Answers | null;
  /** Whose open holds are counted together: a hash, never an address. */
  readonly source: string;
  /** The owner's conversation that this hold belongs to (hash of its token); it has at most one open hold. */
  readonly draft: string | null;
  /** The shop has the unit in its hands, so that it may go on a bench at once. */
  readonly unitHere?: boolean;
  readonly wishKey: WishKey;
};

export type Hold = {
  readonly id: string;
  readonly until: number;
  readonly slot: BookedTime;
  readonly verdict: Verdict;
};

/** Bench time as stored: wall time and zone as promised, the instants as resolved, so that a change of law shows. */
export type BookedTime = {
  readonly bench: string;
  readonly benchName: string;
  readonly startsAt: number;
  readonly endsAt: number;
  readonly date: string;
  readonly minuteOfDay: number;
  readonly zone: string;
};

export type HoldRefusal =
  | { readonly reason: "slot-not-offered"; readonly why: SlotRefusal; readonly offers: readonly Offer[] }
  | { readonly reason: "too-many-holds"; readonly most: number }
  | AnswersAhead
  | KeyReused;

export type BookingWish = {
  readonly id: string;
  /** Who books: the owner, or the shop for a caller. */
  readonly by: "owner" | "shop";
  /** Who of the staff, by name, where the shop books. */
  readonly staff?: string;
  /** The shop has the unit in its hands: the job is booked and received in one. */
  readonly unitHere?: boolean;
  readonly hold: string;
  readonly answers: Answers;
  readonly contact: Contact;
  readonly returnTo: ReturnTo;
  /** The unit's serial number, where the owner can read it. */
  readonly serial: string | null;
  /** "Go ahead without asking up to", minor units. */
  readonly goAheadMinor: number | null;
  /** The price that the asker was shown, minor units; null = none was told. */
  readonly priceMinor: number | null;
  /** What the owner agreed to be told by text; null = nothing. */
  readonly reminders: { readonly text: string } | null;
  /** SHA-256 of the owner's link token, hex. */
  readonly ownerLinkHash: string;
  readonly draft: string | null;
  readonly wishKey: WishKey;
};

/** A new booking's link; each time it is reissued the generation goes up by one. */
export const FIRST_GENERATION = 1;

/** What a confirmed booking answers. The link's token is made from the id and generation; it is never stored. */
export type Booking = {
  readonly id: string;
  readonly jobNumber: string;
  readonly linkGeneration: number;
};

export type BookingRefusal =
  | { readonly reason: "no-such-hold" }
  | { readonly reason: "already-booked" }
  | { readonly reason: "hold-ended"; readonly offers: readonly Offer[] }
  | { readonly reason: "needs-more-time"; readonly verdict: Verdict; readonly offers: readonly Offer[] }
  | { readonly reason: "not-urgent"; readonly verdict: Verdict; readonly offers: readonly Offer[] }
  | { readonly reason: "price-changed"; readonly quote: Quote }
  | AnswersAhead
  | KeyReused;

export type ChangeRefusal =
  | { readonly reason: "no-such-booking" }
  | { readonly reason: "already-cancelled" }
  | { readonly reason: "too-late"; readonly until: number }
  /** The unit has come to the shop, and may have left it again. */
  | { readonly reason: "unit-here"; readonly state: JobState }
  | { readonly reason: "slot-not-offered"; readonly why: SlotRefusal; readonly offers: readonly Offer[] };

/** A job as the shop sees it; the owner's page shows a part of it. */
export type Job = {
  readonly number: string;
  readonly state: JobState;
  readonly bookedAt: number;
  readonly booking: {
    readonly id: string;
    readonly time: BookedTime;
    readonly changeableUntil: number;
    readonly sequence: number;
    /** False where the rest of its time was given to others: the unit was set aside, or has left. */
    readonly keepsTime: boolean;
  };
  readonly owner: Contact;
  readonly returnTo: ReturnTo;
  readonly serial: string | null;
  readonly goAheadMinor: number | null;
  readonly answers: Answers;
  /** As the owner was told at the booking; it stays, whatever is agreed later. See agreed-work.ts for the work now. */
  readonly plan: JobPlan;
  /** The work that the owner approved last; null = as booked. */
  readonly agreed: AgreedWork | null;
  /** True where more work was approved than the booked time holds, and no other time was free. */
  readonly needsBenchTime: boolean;
  /** The last day to post the unit, ISO 8601. */
  readonly postBy: string;
  readonly settingsVersion: number;
  readonly linkGeneration: number;
  readonly history: readonly JobEvent[];
};

/** One line of a job's history. */
export type JobEvent = {
  readonly at: number;
  readonly who: "owner" | "shop";
  readonly what: string;
  /** Who of the staff, by name as it was then; null = the owner, or the shop by itself. */
  readonly staff: string | null;
  /** What was said with it: a reason, a note. */
  readonly note: string | null;
};

/** Whether the booked time still stands; where the job has got to since is its owner's and the shop's business. */
export type BookingState = "booked" | "cancelled";

/** What anybody who knows a booking's id may read of it: nothing personal. A later version outdoes an earlier one. */
export type Receipt = {
  readonly booking: string;
  readonly state: BookingState;
  /** Epoch milliseconds, as `endsAt` is. */
  readonly startsAt: number;
  readonly endsAt: number;
  readonly bench: string;
  readonly version: number;
};

/** One line of the shop's list. */
export type Arrival = {
  readonly number: string;
  readonly state: JobState;
  readonly verdict: Verdict;
  readonly ownerName: string;
  readonly time: BookedTime;
  readonly postBy: string;
};

/** A conversation as kept: answers, the hold it has, the time it ends. */
export type StoredDraft = {
  readonly draft: Draft;
  readonly hold: Hold | null;
  /** True where it has led to a job already. */
  readonly booked: boolean;
  readonly expiresAt: number;
};
