import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { unreachable } from "#shared/basics/unreachable.ts";
import { type Booking, type BookingRefusal, type BookingWish, FIRST_GENERATION } from "#shared/shop/booking.ts";
import { freeQuanta } from "#src/ledger/bench-time-rows.ts";
import { keepBooking } from "#src/ledger/booking-rows.ts";
import { type BookingDecision, type BookingDecisionRefusal, decideBooking } from "#src/ledger/decide-booking.ts";
import { offersInstead } from "#src/ledger/fresh-offers.ts";
import { findHold, type StoredHold, setHoldState } from "#src/ledger/hold-rows.ts";
import { keepJob } from "#src/ledger/job-rows.ts";
import { keepOwnerLink } from "#src/ledger/link-rows.ts";
import { applyMove } from "#src/ledger/move-job.ts";
import { keepSubject } from "#src/ledger/people-rows.ts";
import { noteBoardChange, noteReceiptChange, type Turn, today } from "#src/ledger/turn.ts";
import { answerOnce } from "#src/ledger/wish-rows.ts";

/** Turns a hold into a booking with its job, or says why not. */
export function makeBooking(turn: Turn, wish: BookingWish): Outcome<Booking, BookingRefusal> {
  return answerOnce<Booking, BookingRefusal>(turn.sql, { wishKey: wish.wishKey, now: turn.now }, () => {
    const hold = findHold(turn.sql, wish.hold);
    const { settings, version } = turn.settings();
    const decision = decideBooking({ ...wish, hold, settings, today: today(turn), now: turn.now });
    if (decision.ok) return accept(keep(turn, wish, decision.value, version));
    return refuse(withOffers(turn, wish, hold, decision.refusal));
  });
}

function keep(turn: Turn, wish: BookingWish, decision: BookingDecision, settingsVersion: number): Booking {
  const { sql, now } = turn;
  const { plan, postBy, changeableUntil, slot } = decision;
  const { serial, number } = keepJob(sql, keepSubject(sql, wish, now), {
    answers: wish.answers,
    plan,
    bookedAt: now,
    bookedBy: wish.by,
    bookedStaff: wish.staff ?? null,
    settingsVersion,
    goAheadMinor: wish.goAheadMinor,
    returnTo: wish.returnTo,
    postBy,
    linkGeneration: FIRST_GENERATION,
  });
  keepBooking(sql, { job: serial, id: wish.id, claim: decision.hold.id, changeableUntil, slot });
  keepOwnerLink(sql, { hash: wish.ownerLinkHash, job: serial, generation: FIRST_GENERATION }, now);
  takeOver(turn, decision);
  noteReceiptChange(turn, wish.id, 0);
  if (wish.unitHere) receive(turn, serial, wish.staff ?? null);
  return { id: wish.id, jobNumber: number, linkGeneration: FIRST_GENERATION };
}

function receive(turn: Turn, serial: number, staff: string | null): void {
  const received = applyMove(turn, { serial, move: "receive", staff, note: null });
  if (!received.ok) throw new Error(`A unit that is here could not be received: ${received.refusal.reason}`);
}

/** The hold's time is the booking's from now on; what the work does not need is free again. */
function takeOver(turn: Turn, { hold, slot }: BookingDecision): void {
  setHoldState(turn.sql, hold.id, "booked");
  if (slot.to === hold.slot.to) return;
  freeQuanta(turn.sql, { ...hold.slot, from: slot.to }, hold.id);
  noteBoardChange(turn);
}

function withOffers(
  turn: Turn,
  wish: BookingWish,
  hold: StoredHold | null,
  refusal: BookingDecisionRefusal,
): BookingRefusal {
  switch (refusal.reason) {
    case "no-such-hold":
    case "already-booked":
    case "price-changed":
    case "answers-ahead":
      return refusal;
    case "hold-ended":
    case "needs-more-time":
    case "not-urgent": {
      // The conversation that has the hold would give it up for a new one.
      const own = hold?.state === "open" && hold.draft !== null && hold.draft === wish.draft ? hold.slot : null;
      const { unitHere = false } = wish;
      const ask = { verdict: refusal.verdict, day: hold?.slot.date ?? null, own, unitHere };
      const offers = offersInstead(turn, ask);
      return refusal.reason === "hold-ended" ? { reason: "hold-ended", offers } : { ...refusal, offers };
    }
    default:
      return unreachable(refusal);
  }
}
