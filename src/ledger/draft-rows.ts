import type { Draft } from "#shared/intake/draft.ts";
import { DraftSchema } from "#shared/intake/draft-schema.ts";
import { firstRow, numberIn, rowsOf, textIn } from "#src/ledger/row.ts";

/** A conversation is kept this long after its last answer; default of this project. */
export const DRAFT_LIVES_MS = 14 * 86_400_000;

type KeptDraft = { readonly draft: Draft; readonly expiresAt: number };

/** A draft of another time that cannot be read any more is an empty one: its owner is asked again. */
export function findDraft(sql: SqlStorage, tokenHash: string, now: number): KeptDraft | null {
  const query = "SELECT draft, expires_at FROM draft WHERE token_hash = ? AND expires_at > ?";
  const row = firstRow(sql, query, tokenHash, now);
  if (row === undefined) return null;
  const parsed = DraftSchema.safeParse(JSON.parse(textIn(row, "draft")));
  return { draft: parsed.success ? parsed.data : {}, expiresAt: numberIn(row, "expires_at") };
}

export function keepDraft(sql: SqlStorage, tokenHash: string, { draft, expiresAt }: KeptDraft): void {
  sql.exec(
    `INSERT INTO draft (token_hash, draft, expires_at) VALUES (?, ?, ?)
     ON CONFLICT (token_hash) DO UPDATE SET draft = excluded.draft, expires_at = excluded.expires_at`,
    tokenHash,
    JSON.stringify(draft),
    expiresAt,
  );
}

/** Drops the conversation if it was not spoken in since then. */
export function dropSilentDraft(sql: SqlStorage, tokenHash: string, since: number): void {
  sql.exec("DELETE FROM draft WHERE token_hash = ? AND expires_at <= ?", tokenHash, since + DRAFT_LIVES_MS);
}

export function dropDraft(sql: SqlStorage, tokenHash: string): void {
  sql.exec("DELETE FROM draft WHERE token_hash = ?", tokenHash);
}

/**
 * Drops some of the conversations that stand still the longest: first those of one answer, as a flood of visits leaves
 * them. Who holds bench time or has just booked keeps his. Answers whether there was anything to drop.
 */
export function dropIdleDrafts(sql: SqlStorage, most: number): boolean {
  const query = `DELETE FROM draft WHERE token_hash IN (
    SELECT token_hash FROM draft
    WHERE token_hash NOT IN (SELECT draft FROM hold WHERE draft IS NOT NULL AND state <> 'ended')
    ORDER BY (SELECT count(*) FROM json_each(draft.draft)) > 1, expires_at LIMIT ?) RETURNING 1`;
  return rowsOf(sql, query, most).length > 0;
}

export function countDrafts(sql: SqlStorage): number {
  const row = firstRow(sql, "SELECT count(*) AS n FROM draft");
  return row === undefined ? 0 : numberIn(row, "n");
}
