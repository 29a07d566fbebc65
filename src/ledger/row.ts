/** A row as the database gives it. */
export type Row = Readonly<Record<string, SqlStorageValue>>;

/** The rows of a statement, read at once: a cursor sees what is written after it was opened. */
export const rowsOf = (sql: SqlStorage, query: string, ...values: readonly SqlStorageValue[]): readonly Row[] =>
  sql.exec(query, ...values).toArray();

export const firstRow = (sql: SqlStorage, query: string, ...values: readonly SqlStorageValue[]): Row | undefined =>
  rowsOf(sql, query, ...values)[0];

/** A column that holds text. Anything else there is a bug, and is told by its name only: values may be personal. */
export function textIn(row: Row, column: string): string {
  const value = row[column];
  if (typeof value !== "string") throw new Error(`Column ${column} holds no text`);
  return value;
}

export function numberIn(row: Row, column: string): number {
  const value = row[column];
  if (typeof value !== "number") throw new Error(`Column ${column} holds no number`);
  return value;
}

export const textOrNullIn = (row: Row, column: string): string | null =>
  row[column] === null ? null : textIn(row, column);

export const numberOrNullIn = (row: Row, column: string): number | null =>
  row[column] === null ? null : numberIn(row, column);

/** Yes, no, not sure; a bound boolean would be stored as text. */
export const yesNoColumn = (answer: boolean | null): 1 | 0 | null => (answer === null ? null : answer ? 1 : 0);
