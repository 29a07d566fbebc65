import { approvalsOf, closeApproval } from "#src/ledger/approval-rows.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import type { MoveRule } from "#src/ledger/move-rule.ts";

/** A unit that leaves while its owner is asked takes the question with it. */
export const TAKES_QUESTION_BACK: MoveRule = {
  effect: ({ sql, now }, { serial }, { staff }) => {
    for (const { id } of approvalsOf(sql, serial).filter(({ state }) => state === "open")) {
      closeApproval(sql, id, { state: "withdrawn", by: "shop", at: now }, staff);
      noteEvent(sql, serial, { at: now, who: "shop", what: "approval-withdrawn", staff });
    }
  },
};
