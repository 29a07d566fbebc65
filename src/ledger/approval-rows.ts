import {
  APPROVAL_CLOSERS,
  APPROVAL_STATES,
  type Approval,
  type ApprovalCloser,
  type ApprovalState,
  type ApprovalWord,
} from "#shared/job/approval.ts";
import type { BenchFindings } from "#shared/job/bench-findings.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";
import { whoIn } from "#src/ledger/event-rows.ts";
import { firstRow, numberIn, numberOrNullIn, type Row, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";

/** An approval with the job that it belongs to. */
export type StoredApproval = { readonly job: number; readonly approval: Approval };

/** A photo that was removed since is shown to nobody any more. */
const APPROVAL = `SELECT approval.*, (
  SELECT photo.id FROM photo WHERE photo.id = approval.photo AND removed_at IS NULL) AS photo_shown FROM approval`;

export function keepApproval(sql: SqlStorage, job: number, approval: Approval): void {
  sql.exec(
    `INSERT INTO approval (id, job, state, asked_at, asked_by, offered, why, photo, told, until, closed_at, closed_by, note)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    approval.id,
    job,
    approval.state,
    approval.askedAt,
    approval.askedBy,
    JSON.stringify(approval.offered),
    approval.why,
    approval.photo,
    JSON.stringify(approval.told),
    approval.until,
    approval.closed?.at ?? null,
    approval.closed?.by ?? null,
    approval.closed?.note ?? null,
  );
}

export function findApproval(sql: SqlStorage, id: string): StoredApproval | null {
  const row = firstRow(sql, `${APPROVAL} WHERE approval.id = ?`, id);
  return row === undefined ? null : { job: numberIn(row, "job"), approval: approvalIn(sql, row) };
}

/** All that a job's owner was ever asked, newest first. */
export const approvalsOf = (sql: SqlStorage, job: number): readonly Approval[] =>
  rowsOf(sql, `${APPROVAL} WHERE job = ? ORDER BY asked_at DESC, approval.rowid DESC`, job).map((row) =>
    approvalIn(sql, row),
  );

/** Open, but their time is over. The last millisecond still counts. */
export const overdueApprovals = (sql: SqlStorage, now: number): readonly StoredApproval[] =>
  rowsOf(sql, `${APPROVAL} WHERE state = 'open' AND until < ?`, now).map((row) => ({
    job: numberIn(row, "job"),
    approval: approvalIn(sql, row),
  }));

type Closing = { readonly state: Exclude<ApprovalState, "open">; readonly by: ApprovalCloser; readonly at: number };

export function closeApproval(sql: SqlStorage, id: string, { state, by, at }: Closing, note: string | null): void {
  const query = "UPDATE approval SET state = ?, closed_at = ?, closed_by = ?, note = ? WHERE id = ? AND state = 'open'";
  sql.exec(query, state, at, by, note, id);
}

/** Answers false where this very word is there already. */
export function addWord(sql: SqlStorage, approval: string, word: ApprovalWord & { readonly key: string }): boolean {
  const query = `INSERT OR IGNORE INTO approval_word (approval, step, key, at, who, staff, text)
    SELECT ?1, coalesce(max(step), 0) + 1, ?2, ?3, ?4, ?5, ?6 FROM approval_word WHERE approval = ?1 RETURNING step`;
  return firstRow(sql, query, approval, word.key, word.at, word.who, word.staff, word.text) !== undefined;
}

function approvalIn(sql: SqlStorage, row: Row): Approval {
  const id = textIn(row, "id");
  const closedAt = numberOrNullIn(row, "closed_at");
  return {
    id,
    state: oneOf(APPROVAL_STATES, textIn(row, "state")),
    askedAt: numberIn(row, "asked_at"),
    askedBy: textIn(row, "asked_by"),
    // Both were shown to the owner, word for word: kept, and never worked out again.
    offered: JSON.parse(textIn(row, "offered")) as AgreedWork,
    told: JSON.parse(textIn(row, "told")) as BenchFindings,
    why: textIn(row, "why"),
    photo: textOrNullIn(row, "photo_shown"),
    until: numberIn(row, "until"),
    closed:
      closedAt === null
        ? null
        : { at: closedAt, by: oneOf(APPROVAL_CLOSERS, textIn(row, "closed_by")), note: textOrNullIn(row, "note") },
    words: wordsOf(sql, id),
  };
}

const wordsOf = (sql: SqlStorage, approval: string): readonly ApprovalWord[] =>
  rowsOf(sql, "SELECT at, who, staff, text FROM approval_word WHERE approval = ? ORDER BY step", approval).map(
    (row) => ({
      at: numberIn(row, "at"),
      who: whoIn(row, "who"),
      staff: textOrNullIn(row, "staff"),
      text: textIn(row, "text"),
    }),
  );

function oneOf<Word extends string>(words: readonly Word[], text: string): Word {
  const known = words.find((word) => word === text);
  if (known === undefined) throw new Error("An approval with a word that is not known");
  return known;
}
