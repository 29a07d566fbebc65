import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Slot, SlotRefusal } from "#shared/calendar/bookable.ts";
import type { HoldWish } from "#shared/shop/booking.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import type { StoredHold } from "#src/ledger/hold-rows.ts";

type HoldCase = {
  readonly wish: HoldWish;
  readonly verdict: Verdict;
  readonly slot: Outcome<Slot, SlotRefusal>;
  /** Open holds of the same source, without the one that this wish would replace. */
  readonly openHolds: number;
  readonly most: number;
  readonly holdMinutes: number;
  readonly now: number;
};

export type HoldDecisionRefusal =
  | { readonly reason: "too-many-holds"; readonly most: number }
  | { readonly reason: "slot-not-offered"; readonly why: SlotRefusal };

export function decideHold(it: HoldCase): Outcome<StoredHold, HoldDecisionRefusal> {
  if (it.openHolds >= it.most) return refuse({ reason: "too-many-holds", most: it.most });
  if (!it.slot.ok) return refuse({ reason: "slot-not-offered", why: it.slot.refusal });
  return accept({
    id: it.wish.id,
    state: "open",
    source: it.wish.source,
    draft: it.wish.draft,
    verdict: it.verdict,
    heldAt: it.now,
    until: it.now + it.holdMinutes * 60_000,
    slot: it.slot.value,
  });
}
