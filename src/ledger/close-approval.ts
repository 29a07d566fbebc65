import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { AnswerRefusal, Asked, WithdrawWish } from "#shared/job/approval-wish.ts";
import { HISTORY_NOTES } from "#shared/messages/approval-notes.ts";
import { closeApproval, findApproval, overdueApprovals } from "#src/ledger/approval-rows.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { applyMove } from "#src/ledger/move-job.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** The shop takes its question back and goes on with the unit. Taken back twice, it is taken back once. */
export function withdrawApproval(turn: Turn, wish: WithdrawWish): Outcome<Asked, AnswerRefusal> {
  const { sql, now } = turn;
  endOverdueApprovals(turn);
  const stored = findJob(sql, { by: "number", number: wish.number });
  const found = findApproval(sql, wish.approval);
  if (stored === null || found?.job !== stored.serial) return refuse({ reason: "no-such-approval" });
  const { state } = found.approval;
  if (state === "open") {
    closeApproval(sql, wish.approval, { state: "withdrawn", by: "shop", at: now }, wish.staff);
    noteEvent(sql, stored.serial, { at: now, who: "shop", what: "approval-withdrawn", staff: wish.staff });
    backToBench(turn, stored.serial, wish.staff, null);
  } else if (state !== "withdrawn") return refuse({ reason: "closed", state });
  const job = findJob(sql, { by: "number", number: wish.number })?.job ?? stored.job;
  return accept({ job, approval: findApproval(sql, wish.approval)?.approval ?? found.approval });
}

/** Questions that nobody answered in time: at once for whoever asks, not only when the alarm comes round. */
export function endOverdueApprovals(turn: Turn): void {
  const { sql, now } = turn;
  for (const { job, approval } of overdueApprovals(sql, now)) {
    closeApproval(sql, approval.id, { state: "expired", by: "time", at: now }, null);
    noteEvent(sql, job, { at: now, who: "shop", what: "approval-expired" });
    backToBench(turn, job, null, HISTORY_NOTES.noAnswer);
  }
}

function backToBench(turn: Turn, serial: number, staff: string | null, note: string | null): void {
  const moved = applyMove(turn, { serial, move: "owner-answered", staff, note });
  if (!moved.ok) throw new Error(`A closed question could not put the job back on the bench: ${moved.refusal.reason}`);
}
