import type { JobMoveName } from "#shared/job/job-moves.ts";
import { finishGuard } from "#src/ledger/finish-guard.ts";
import type { MoveRule } from "#src/ledger/move-rule.ts";
import { sealRecord, withdrawRecord } from "#src/ledger/seal-record.ts";
import { TAKES_QUESTION_BACK } from "#src/ledger/take-question-back.ts";

/** The moves that are more than a new state. What stands here must not move jobs itself. */
export const MOVE_RULES: Readonly<Partial<Record<JobMoveName, MoveRule>>> = {
  "set-aside": TAKES_QUESTION_BACK,
  return: TAKES_QUESTION_BACK,
  finish: { guard: finishGuard },
  ship: { effect: sealRecord, undone: withdrawRecord },
};
