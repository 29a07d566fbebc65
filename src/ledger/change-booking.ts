import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Slot, SlotRefusal } from "#shared/calendar/bookable.ts";
import { changeableUntil } from "#shared/calendar/changeable.ts";
import { offerId } from "#shared/calendar/offer-id.ts";
import type { ChangeRefusal, Job } from "#shared/shop/booking.ts";
import { freeQuanta, swapQuanta } from "#src/ledger/bench-time-rows.ts";
import { moveBookingRow, raiseSequence } from "#src/ledger/booking-rows.ts";
import { checkWish } from "#src/ledger/check-wish.ts";
import { decideChange } from "#src/ledger/decide-change.ts";
import { endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import { type JobEventName, noteEvent } from "#src/ledger/event-rows.ts";
import { dayOfOffer, freshOffers } from "#src/ledger/fresh-offers.ts";
import { findJob, type StoredJob, setJobState, setPostBy } from "#src/ledger/job-rows.ts";
import { lastPostDay } from "#src/ledger/last-post-day.ts";
import { noteBoardChange, noteReceiptChange, type Turn, today } from "#src/ledger/turn.ts";

/** Who wishes to change which booking; the shop shows no link. */
export type ChangeWish = { readonly booking: string; readonly linkHash: string; readonly by: "owner" | "shop" };

/** Gives up the booked time for the offered one, in one step. Asked for the time it has, a booking stays as it is. */
export function moveBooking(turn: Turn, wish: ChangeWish & { readonly offer: string }): Outcome<Job, ChangeRefusal> {
  const stored = findChangeable(turn, wish);
  const isThereAlready = stored?.job.state === "booked" && offerId(stored.slot.bench, stored.slot.from) === wish.offer;
  if (isThereAlready && stored.job.booking.id === wish.booking) return accept(stored.job);
  const may = decideChange({ ...wish, stored, now: turn.now });
  if (!may.ok) return may;
  endOverdueHolds(turn);
  const { verdict } = may.value.job.plan.judgement;
  const slot = checkWish(turn, { offer: wish.offer, verdict, own: may.value.claim });
  if (!slot.ok) return notOffered(slot.refusal);
  return move(turn, wish, may.value, slot.value) ? accept(jobNow(turn, wish)) : notOffered("taken");

  function notOffered(why: SlotRefusal): Outcome<Job, ChangeRefusal> {
    const own = may.ok ? may.value.slot : null;
    const offers = freshOffers(turn, { verdict, day: dayOfOffer(turn, wish.offer), own });
    return refuse({ reason: "slot-not-offered", why, offers });
  }
}

/** Frees the time; the job and its history stay. A booking that is cancelled already stays as it is. */
export function cancelBooking(turn: Turn, wish: ChangeWish): Outcome<Job, ChangeRefusal> {
  const stored = findChangeable(turn, wish);
  if (stored?.job.state === "cancelled" && stored.job.booking.id === wish.booking) return accept(stored.job);
  const may = decideChange({ ...wish, stored, now: turn.now });
  if (!may.ok) return may;
  const { serial, slot, claim } = may.value;
  freeQuanta(turn.sql, slot, claim);
  setJobState(turn.sql, serial, "cancelled");
  note(turn, wish, serial, { what: "cancelled", version: raiseSequence(turn.sql, wish.booking) });
  return accept(jobNow(turn, wish));
}

const findChangeable = ({ sql, now }: Turn, { by, booking, linkHash }: ChangeWish): StoredJob | null =>
  findJob(sql, by === "shop" ? { by: "booking", booking } : { by: "link", hash: linkHash, now });

function move(turn: Turn, wish: ChangeWish, { serial, claim, slot, job }: StoredJob, wanted: Slot): boolean {
  if (!swapQuanta(turn.sql, { span: slot, claim }, { span: wanted, claim })) return false;
  const { calendar } = turn.settings().settings;
  const until = changeableUntil(wanted.startsAt, calendar);
  const version = moveBookingRow(turn.sql, { id: wish.booking, changeableUntil: until, slot: wanted });
  const { verdict } = job.plan.judgement;
  setPostBy(turn.sql, serial, lastPostDay({ date: wanted.date, verdict, today: today(turn) }, calendar));
  note(turn, wish, serial, { what: "moved", version });
  return true;
}

function note(
  turn: Turn,
  { booking, by }: ChangeWish,
  job: number,
  { what, version }: { readonly what: JobEventName; readonly version: number },
): void {
  noteEvent(turn.sql, job, { at: turn.now, who: by, what });
  noteBoardChange(turn);
  noteReceiptChange(turn, booking, version);
}

function jobNow({ sql }: Turn, { booking }: ChangeWish): Job {
  const stored = findJob(sql, { by: "booking", booking });
  if (stored === null) throw new Error("A booking vanished while it was changed");
  return stored.job;
}
