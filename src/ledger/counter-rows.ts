import { firstRow, numberIn } from "#src/ledger/row.ts";

/** In which of its periods the ledger was last purged. */
export function lastPurge(sql: SqlStorage): number {
  const row = firstRow(sql, "SELECT value FROM counter WHERE name = 'purge'");
  return row === undefined ? 0 : numberIn(row, "value");
}

export function notePurge(sql: SqlStorage, period: number): void {
  sql.exec("INSERT OR REPLACE INTO counter (name, value) VALUES ('purge', ?)", period);
}

/** Rises with every change of bench time or of the settings; what is worked out from them is good for one version. */
export function boardVersion(sql: SqlStorage): number {
  const row = firstRow(sql, "SELECT value FROM counter WHERE name = 'board'");
  return row === undefined ? 0 : numberIn(row, "value");
}

/** Answers the new version. */
export function raiseBoardVersion(sql: SqlStorage): number {
  const row = firstRow(
    sql,
    `INSERT INTO counter (name, value) VALUES ('board', 1)
     ON CONFLICT (name) DO UPDATE SET value = value + 1 RETURNING value`,
  );
  if (row === undefined) throw new Error("The board's version was not counted");
  return numberIn(row, "value");
}
