import { freeQuanta } from "#src/ledger/bench-time-rows.ts";
import { openHoldOf, overdueHolds, type StoredHold, setHoldState } from "#src/ledger/hold-rows.ts";
import { noteBoardChange, type Turn } from "#src/ledger/turn.ts";

/** Time that was held too long is free again: at once for whoever asks, not only when the alarm comes round. */
export function endOverdueHolds(turn: Turn): void {
  const overdue = overdueHolds(turn.sql, turn.now);
  for (const hold of overdue) endHold(turn.sql, hold);
  if (overdue.length > 0) noteBoardChange(turn);
}

/** A conversation that is given up lets go of the time it holds. */
export function endHoldOf(turn: Turn, draft: string): void {
  const hold = openHoldOf(turn.sql, draft, turn.now);
  if (hold === null) return;
  endHold(turn.sql, hold);
  noteBoardChange(turn);
}

function endHold(sql: SqlStorage, { id, slot }: StoredHold): void {
  freeQuanta(sql, slot, id);
  setHoldState(sql, id, "ended");
}
