import type { Draft } from "#shared/intake/draft.ts";
import { DraftSchema } from "#shared/intake/draft-schema.ts";
import { firstRow, numberIn, textIn } from "#src/ledger/row.ts";

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

/** Never lengthens a draft's life. */
export function endDraftBy(sql: SqlStorage, tokenHash: string, expiresAt: number): void {
  sql.exec("UPDATE draft SET expires_at = min(expires_at, ?) WHERE token_hash = ?", expiresAt, tokenHash);
}

export function dropDraft(sql: SqlStorage, tokenHash: string): void {
  sql.exec("DELETE FROM draft WHERE token_hash = ?", tokenHash);
}

export function countDrafts(sql: SqlStorage): number {
  const row = firstRow(sql, "SELECT count(*) AS n FROM draft");
  return row === undefined ? 0 : numberIn(row, "n");
}
