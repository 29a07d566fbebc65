import { numberIn, rowsOf, textIn } from "#src/ledger/row.ts";

/** What must be told to everybody. The subject of a receipt is its booking, the board has none. */
export type Publication = {
  readonly key: string;
  readonly subject: string;
  readonly version: number;
  readonly tries: number;
};

/** Changes within this time become one writing: a key of the store bears one write a second. */
export const PUBLISH_AFTER_MS = 1000;
const MOST_AT_ONCE = 100;

/** A publication that is waiting already only learns the newer version, so a stream of changes cannot put it off. */
export function mustPublish(sql: SqlStorage, it: Omit<Publication, "tries">, now: number): void {
  sql.exec(
    `INSERT INTO publication (key, subject, version, due_at, tries) VALUES (?, ?, ?, ?, 0)
     ON CONFLICT (key) DO UPDATE SET version = excluded.version`,
    it.key,
    it.subject,
    it.version,
    now + PUBLISH_AFTER_MS,
  );
}

export const duePublications = (sql: SqlStorage, now: number): readonly Publication[] =>
  rowsOf(
    sql,
    "SELECT key, subject, version, tries FROM publication WHERE due_at <= ? ORDER BY due_at LIMIT ?",
    now,
    MOST_AT_ONCE,
  ).map((row) => ({
    key: textIn(row, "key"),
    subject: textIn(row, "subject"),
    version: numberIn(row, "version"),
    tries: numberIn(row, "tries"),
  }));

/** Done, unless a newer version came up while this one was on its way: that one still has to go. */
export function setPublished(sql: SqlStorage, { key, version }: Publication, now: number): void {
  sql.exec("DELETE FROM publication WHERE key = ? AND version = ?", key, version);
  sql.exec("UPDATE publication SET due_at = ?, tries = 0 WHERE key = ?", now + PUBLISH_AFTER_MS, key);
}

/** Changes a row that is there; never adds one. */
export function postponePublication(sql: SqlStorage, key: string, dueAt: number): void {
  sql.exec("UPDATE publication SET due_at = ?, tries = tries + 1 WHERE key = ?", dueAt, key);
}
