import { PHOTO_TYPES, type Photo, readPhotoPlace } from "#shared/job/photo.ts";
import { firstRow, numberIn, type Row, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";

/** A job's photos, oldest first; removed ones are not among them. */
export const photosOf = (sql: SqlStorage, job: number): readonly Photo[] =>
  rowsOf(sql, "SELECT * FROM photo WHERE job = ? AND removed_at IS NULL ORDER BY at, rowid", job).map(photoIn);

export function findPhoto(sql: SqlStorage, job: number, id: string): Photo | null {
  const row = firstRow(sql, "SELECT * FROM photo WHERE id = ? AND job = ? AND removed_at IS NULL", id, job);
  return row === undefined ? null : photoIn(row);
}

/** What a key has brought to a job already. */
export function photoOfKey(sql: SqlStorage, job: number, key: string): Photo | null {
  const row = firstRow(sql, "SELECT * FROM photo WHERE key = ? AND job = ?", key, job);
  return row === undefined ? null : photoIn(row);
}

export function keepPhotoRow(sql: SqlStorage, job: number, key: string, photo: Photo): void {
  const { id, step, part, type, bytes, sha256, at, staff } = photo;
  const query = `INSERT INTO photo (id, key, job, step, part, type, bytes, sha256, at, staff)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`;
  sql.exec(query, id, key, job, step, part, type, bytes, sha256, at, staff);
}

export function markRemoved(sql: SqlStorage, id: string, now: number): void {
  sql.exec("UPDATE photo SET removed_at = ? WHERE id = ?", now, id);
}

/** Says that bytes are on their way, and when they are dropped where nobody claims them. */
export function announceBytes(sql: SqlStorage, id: string, dropAt: number): void {
  sql.exec("INSERT INTO photo_bytes (id, state, due_at) VALUES (?, 'coming', ?)", id, dropAt);
}

/** The bytes have an owner now. Answers false where they were given up already. */
export const claimBytes = (sql: SqlStorage, id: string): boolean =>
  rowsOf(sql, "DELETE FROM photo_bytes WHERE id = ? AND state = 'coming' RETURNING id", id).length > 0;

export function giveUpBytes(sql: SqlStorage, id: string, now: number): void {
  sql.exec("INSERT OR REPLACE INTO photo_bytes (id, state, due_at) VALUES (?, 'to-drop', ?)", id, now);
}

/** Bytes whose time is over, given up for good; they are due again later, until they are forgotten. */
export const takeDueBytes = (sql: SqlStorage, now: number, again: number, most: number): readonly string[] =>
  rowsOf(
    sql,
    `UPDATE photo_bytes SET state = 'to-drop', due_at = ?
     WHERE id IN (SELECT id FROM photo_bytes WHERE due_at <= ? LIMIT ?) RETURNING id`,
    again,
    now,
    most,
  ).map((row) => textIn(row, "id"));

export function forgetBytes(sql: SqlStorage, id: string): void {
  sql.exec("DELETE FROM photo_bytes WHERE id = ? AND state = 'to-drop'", id);
}

function photoIn(row: Row): Photo {
  const place = readPhotoPlace(textIn(row, "step"), textOrNullIn(row, "part") ?? undefined);
  const type = PHOTO_TYPES.find((known) => known === row["type"]);
  if (place === null || type === undefined) throw new Error("A photo is of a kind or a place that is not known");
  return {
    ...place,
    type,
    id: textIn(row, "id"),
    bytes: numberIn(row, "bytes"),
    sha256: textIn(row, "sha256"),
    at: numberIn(row, "at"),
    staff: textIn(row, "staff"),
  };
}
