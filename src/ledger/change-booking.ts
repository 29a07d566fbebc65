import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Slot, SlotRefusal } from "#shared/calendar/bookable.ts";
import { changeableUntil } from "#shared/calendar/changeable.ts";
import { offerId } from "#shared/calendar/offer-id.ts";
import type { JobEventName } from "#shared/job/job-event-name.ts";
import type { ChangeRefusal, Job } from "#shared/shop/booking.ts";
import { swapQuanta } from "#src/ledger/bench-time-rows.ts";
import { moveBookingRow, raiseSequence } from "#src/ledger/booking-rows.ts";
import { checkWish } from "#src/ledger/check-wish.ts";
import { decideChange } from "#src/ledger/decide-change.ts";
import { endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { dayOfOffer, freshOffers } from "#src/ledger/fresh-offers.ts";
import { findJob, type StoredJob, setJobState, setNeedsBenchTime, setPostBy } from "#src/ledger/job-rows.ts";
import { lastPostDay } from "#src/ledger/last-post-day.ts";
import { freeBenchTime } from "#src/ledger/settle-bench-time.ts";
import { noteBoardChange, noteReceiptChange, type Turn, today } from "#src/ledger/turn.ts";

/** Who wishes to change which booking; the shop shows no link. */
export type ChangeWish = {
  readonly booking: string;
  readonly linkHash: string;
  readonly by: "owner" | "shop";
  /** Who of the staff, by name, where the shop wishes it. */
  readonly staff?: string;
};

/** Gives up the booked time for the offered one, in one step. Asked for the time it has, a booking stays as it is. */
export function moveBooking(turn: Turn, wish: ChangeWish & { readonly offer: string }): Outcome<Job, ChangeRefusal> {
  const stored = findChangeable(turn, wish);
  if (stored !== null && isThereAlready(stored, wish)) return accept(stored.job);
  const may = decideChange({ ...wish, stored, change: "move", now: turn.now });
  if (!may.ok) return may;
  endOverdueHolds(turn);
  const verdict = may.value.job.agreed?.work ?? may.value.job.plan.judgement.verdict;
  const unitHere = may.value.job.state !== "booked";
  const slot = checkWish(turn, { offer: wish.offer, verdict, own: may.value.claim, unitHere });
  if (!slot.ok) return notOffered(slot.refusal);
  return move(turn, wish, may.value, slot.value) ? accept(jobNow(turn, wish)) : notOffered("taken");

  function notOffered(why: SlotRefusal): Outcome<Job, ChangeRefusal> {
    const own = may.ok ? may.value.kept : null;
    const offers = freshOffers(turn, { verdict, day: dayOfOffer(turn, wish.offer), own, unitHere });
    return refuse({ reason: "slot-not-offered", why, offers });
  }
}

/** Frees the time; the job and its history stay. A booking that is cancelled already stays as it is. */
export function cancelBooking(turn: Turn, wish: ChangeWish): Outcome<Job, ChangeRefusal> {
  const stored = findChangeable(turn, wish);
  if (stored?.job.state === "cancelled" && stored.job.booking.id === wish.booking) return accept(stored.job);
  const may = decideChange({ ...wish, stored, change: "cancel", now: turn.now });
  if (!may.ok) return may;
  const { serial, slot } = may.value;
  freeBenchTime(turn, may.value, slot.from);
  setJobState(turn.sql, serial, "cancelled");
  note(turn, wish, serial, { what: "cancelled", version: raiseSequence(turn.sql, wish.booking) });
  return accept(jobNow(turn, wish));
}

const findChangeable = ({ sql, now }: Turn, { by, booking, linkHash }: ChangeWish): StoredJob | null =>
  findJob(sql, by === "shop" ? { by: "booking", booking } : { by: "link", hash: linkHash, now });

const isThereAlready = ({ job, slot }: StoredJob, { booking, offer }: ChangeWish & { readonly offer: string }) =>
  job.booking.id === booking &&
  job.state !== "cancelled" &&
  job.booking.keepsTime &&
  !job.needsBenchTime &&
  offerId(slot.bench, slot.from) === offer;

function move(turn: Turn, wish: ChangeWish, { serial, claim, kept, job }: StoredJob, wanted: Slot): boolean {
  const given = kept === null ? null : { span: kept, claim };
  if (!swapQuanta(turn.sql, given, { span: wanted, claim })) return false;
  const { calendar } = turn.settings().settings;
  const until = changeableUntil(wanted.startsAt, calendar);
  const version = moveBookingRow(turn.sql, { id: wish.booking, changeableUntil: until, slot: wanted });
  const { verdict } = job.plan.judgement;
  if (job.needsBenchTime) setNeedsBenchTime(turn.sql, serial, false);
  if (job.state === "booked")
    setPostBy(turn.sql, serial, lastPostDay({ date: wanted.date, verdict, today: today(turn) }, calendar));
  noteBoardChange(turn);
  note(turn, wish, serial, { what: "moved", version });
  return true;
}

function note(
  turn: Turn,
  { booking, by, staff }: ChangeWish,
  job: number,
  { what, version }: { readonly what: JobEventName; readonly version: number },
): void {
  noteEvent(turn.sql, job, { at: turn.now, who: by, what, staff: staff ?? null });
  noteReceiptChange(turn, booking, version);
}

function jobNow({ sql }: Turn, { booking }: ChangeWish): Job {
  const stored = findJob(sql, { by: "booking", booking });
  if (stored === null) throw new Error("A booking vanished while it was changed");
  return stored.job;
}
