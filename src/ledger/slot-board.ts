import { boardFrom, type SlotBoard } from "#shared/calendar/board-schema.ts";
import { boardVersion } from "#src/ledger/counter-rows.ts";
import { endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** The board as the rows have it in this turn. */
export function slotBoard(turn: Turn): SlotBoard {
  endOverdueHolds(turn);
  return boardFrom({
    version: boardVersion(turn.sql),
    now: turn.now,
    settings: turn.settings().settings.calendar,
    busy: turn.busy(turn.now),
  });
}
