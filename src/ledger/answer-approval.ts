import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Approval } from "#shared/job/approval.ts";
import type { AnswerRefusal, AnswerWish, ApprovalAnswer, Asked } from "#shared/job/approval-wish.ts";
import { HISTORY_NOTES, LATE_ANSWER } from "#shared/messages/approval-notes.ts";
import { agreeWork, workText } from "#src/ledger/agree-work.ts";
import { addWord, closeApproval, findApproval } from "#src/ledger/approval-rows.ts";
import { endOverdueApprovals } from "#src/ledger/close-approval.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob, type StoredJob } from "#src/ledger/job-rows.ts";
import { applyMove } from "#src/ledger/move-job.ts";
import type { Turn } from "#src/ledger/turn.ts";

/**
 * Takes the owner's yes or no: the answer, the job's new work, its bench time and its state are written together or not
 * at all. The same answer given twice is one answer; another one, or one that comes too late, is kept as a word for the
 * shop to read, and changes nothing.
 */
export function answerApproval(turn: Turn, wish: AnswerWish): Outcome<Asked, AnswerRefusal> {
  const { sql, now } = turn;
  endOverdueApprovals(turn);
  const stored = findJob(sql, { by: "link", hash: wish.linkHash, now });
  const found = findApproval(sql, wish.approval);
  if (stored === null || found?.job !== stored.serial) return refuse({ reason: "no-such-approval" });
  const { approval } = found;
  const { state } = approval;
  if (state === CLOSES_AS[wish.answer]) return accept({ job: stored.job, approval });
  if (state !== "open") {
    keepLateAnswer(turn, stored.serial, wish);
    return refuse({ reason: "closed", state });
  }
  close(turn, stored, approval, wish.answer);
  return accept(answeredNow(turn, wish));
}

const CLOSES_AS = { approve: "approved", decline: "declined" } as const satisfies Record<ApprovalAnswer, string>;

function close(turn: Turn, stored: StoredJob, approval: Approval, answer: ApprovalAnswer): void {
  const { serial, job } = stored;
  closeApproval(turn.sql, approval.id, { state: CLOSES_AS[answer], by: "owner", at: turn.now }, null);
  const note = workText(turn, approval.offered);
  const what = answer === "approve" ? "owner-approved" : "owner-declined";
  noteEvent(turn.sql, serial, { at: turn.now, who: "owner", what, note });
  const back = answer === "approve" ? null : job.agreed === null ? HISTORY_NOTES.asBooked : HISTORY_NOTES.asAgreed;
  const moved = applyMove(turn, { serial, move: "owner-answered", who: "owner", staff: null, note: back });
  if (!moved.ok) throw new Error(`An answer could not put the job back on the bench: ${moved.refusal.reason}`);
  if (answer === "approve") agreeWork(turn, findJobOf(turn, job.number), { ...BY_OWNER, offered: approval.offered });
}

const BY_OWNER = { who: "owner", staff: null, because: null } as const;

/** As it is after the move, which may have given it bench time back. */
function findJobOf({ sql }: Turn, number: string): StoredJob {
  const stored = findJob(sql, { by: "number", number });
  if (stored === null) throw new Error("A job vanished while its owner answered");
  return stored;
}

/** One line however often it is tapped. */
function keepLateAnswer({ sql, now }: Turn, job: number, { approval, answer }: AnswerWish): void {
  const word = { at: now, who: "owner", staff: null, text: LATE_ANSWER[answer] } as const;
  if (!addWord(sql, approval, { ...word, key: `${approval}.late.${answer}` })) return;
  noteEvent(sql, job, { at: now, who: "owner", what: "owner-asked", note: word.text });
}

function answeredNow({ sql, now }: Turn, { linkHash, approval: id }: AnswerWish): Asked {
  const job = findJob(sql, { by: "link", hash: linkHash, now })?.job;
  const approval = findApproval(sql, id)?.approval;
  if (job === undefined || approval === undefined) throw new Error("What was answered is not there");
  return { job, approval };
}
