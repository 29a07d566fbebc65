import { firstRow } from "#src/ledger/row.ts";

/** Uses a link up; false where it was used before. Its nonce is kept until the link would have expired anyway. */
export function useLink(sql: SqlStorage, nonce: string, expires: number): boolean {
  if (isLinkUsed(sql, nonce)) return false;
  sql.exec("INSERT INTO used_link (nonce, expires_at) VALUES (?, ?)", nonce, expires);
  return true;
}

export const isLinkUsed = (sql: SqlStorage, nonce: string): boolean =>
  firstRow(sql, "SELECT 1 FROM used_link WHERE nonce = ?", nonce) !== undefined;
