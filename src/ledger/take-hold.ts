import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { SlotRefusal } from "#shared/calendar/bookable.ts";
import { answersAhead } from "#shared/craft/answers-ahead.ts";
import type { Hold, HoldRefusal, HoldWish } from "#shared/shop/booking.ts";
import { judge } from "#shared/triage/judge.ts";
import { swapQuanta } from "#src/ledger/bench-time-rows.ts";
import { checkWish } from "#src/ledger/check-wish.ts";
import { decideHold } from "#src/ledger/decide-hold.ts";
import { endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import { dayOfOffer, offersInstead } from "#src/ledger/fresh-offers.ts";
import {
  countOpenHolds,
  keepHold,
  openHoldOf,
  type StoredHold,
  setHoldState,
  toldHold,
} from "#src/ledger/hold-rows.ts";
import { noteBoardChange, type Turn, today } from "#src/ledger/turn.ts";
import { answerOnce } from "#src/ledger/wish-rows.ts";

/** Holds bench time for a while, or says why not with the nearest free offers. */
export function takeHold(turn: Turn, wish: HoldWish, most: number): Outcome<Hold, HoldRefusal> {
  const { sql, now } = turn;
  return answerOnce<Hold, HoldRefusal>(sql, { wishKey: wish.wishKey, now }, () => take(turn, wish, most));
}

function take(turn: Turn, wish: HoldWish, most: number): Outcome<Hold, HoldRefusal> {
  const { sql, now } = turn;
  endOverdueHolds(turn);
  const { triage, calendar } = turn.settings().settings;
  const ahead = wish.answers === null ? [] : answersAhead(wish.answers, today(turn));
  if (ahead.length > 0) return refuse({ reason: "answers-ahead", ahead });
  const verdict = wish.answers === null ? wish.verdict : judge(wish.answers, today(turn), triage).verdict;
  const { unitHere = false } = wish;
  const earlier = wish.draft === null ? null : openHoldOf(sql, wish.draft, now);
  const decision = decideHold({
    wish,
    verdict,
    slot: checkWish(turn, { offer: wish.offer, verdict, own: earlier?.id ?? null, unitHere }),
    openHolds: countOpenHolds(sql, wish.source, now) - (earlier?.source === wish.source ? 1 : 0),
    most,
    holdMinutes: calendar.holdMinutes,
    now,
  });
  if (decision.ok) return keep(turn, earlier, decision.value) ? accept(toldHold(decision.value)) : notOffered("taken");
  return decision.refusal.reason === "slot-not-offered" ? notOffered(decision.refusal.why) : refuse(decision.refusal);

  function notOffered(why: SlotRefusal): Outcome<Hold, HoldRefusal> {
    const ask = { verdict, day: dayOfOffer(turn, wish.offer), own: earlier?.slot ?? null, unitHere };
    return refuse({ reason: "slot-not-offered", why, offers: offersInstead(turn, ask) });
  }
}

/** A conversation has one open hold: the earlier one is given up for the new one, or kept where that fails. */
function keep(turn: Turn, earlier: StoredHold | null, hold: StoredHold): boolean {
  const given = earlier === null ? null : { span: earlier.slot, claim: earlier.id };
  if (!swapQuanta(turn.sql, given, { span: hold.slot, claim: hold.id })) return false;
  if (earlier !== null) setHoldState(turn.sql, earlier.id, "ended");
  keepHold(turn.sql, hold);
  noteBoardChange(turn);
  return true;
}
