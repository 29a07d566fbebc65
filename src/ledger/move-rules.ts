import type { JobMoveName } from "#shared/job/job-moves.ts";
import { finishGuard } from "#src/ledger/finish-guard.ts";
import type { MoveRule } from "#src/ledger/move-rule.ts";
import { sealRecord, withdrawRecord } from "#src/ledger/seal-record.ts";

/** The moves that are more than a new state. What stands here must not move jobs itself. */
export const MOVE_RULES: Readonly<Partial<Record<JobMoveName, MoveRule>>> = {
  finish: { guard: finishGuard },
  ship: { effect: sealRecord, undone: withdrawRecord },
};
