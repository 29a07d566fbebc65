import { PASSKEY_ALGORITHMS, type Passkey, type PasskeyEntry } from "#shared/shop/staff-account.ts";
import { firstRow, numberIn, numberOrNullIn, type Row, rowsOf, textIn } from "#src/ledger/row.ts";

/** False where that passkey is known already. */
export function keepPasskey(
  sql: SqlStorage,
  { id, publicKey, algorithm, counter, transports }: Passkey,
  { staff, label, now }: { readonly staff: number; readonly label: string; readonly now: number },
): boolean {
  if (firstRow(sql, "SELECT 1 FROM passkey WHERE id = ?", id) !== undefined) return false;
  const query = `INSERT INTO passkey (id, staff, public_key, algorithm, counter, transports, label, added_at)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?)`;
  sql.exec(query, id, staff, publicKey, algorithm, counter, JSON.stringify(transports), label, now);
  return true;
}

/** With whose it is, as long as they work here. */
export function findPasskey(sql: SqlStorage, id: string) {
  const query = `SELECT passkey.*, staff.handle FROM passkey
    JOIN staff ON staff.id = passkey.staff AND staff.left_at IS NULL WHERE passkey.id = ?`;
  const row = firstRow(sql, query, id);
  if (row === undefined) return null;
  return { passkey: passkeyIn(row), staff: numberIn(row, "staff"), handle: textIn(row, "handle") };
}

export function notePasskeyUse(sql: SqlStorage, id: string, counter: number, now: number): void {
  sql.exec("UPDATE passkey SET counter = ?, used_at = ? WHERE id = ?", counter, now, id);
}

/** The label of the one removed; null where that person has no such passkey. */
export function removePasskey(sql: SqlStorage, staff: number, id: string): string | null {
  const row = firstRow(sql, "DELETE FROM passkey WHERE id = ? AND staff = ? RETURNING label", id, staff);
  return row === undefined ? null : textIn(row, "label");
}

export const passkeysOf = (sql: SqlStorage, staff: number): readonly PasskeyEntry[] =>
  rowsOf(sql, "SELECT id, label, added_at, used_at FROM passkey WHERE staff = ? ORDER BY added_at, id", staff).map(
    (row) => ({
      id: textIn(row, "id"),
      label: textIn(row, "label"),
      addedAt: numberIn(row, "added_at"),
      usedAt: numberOrNullIn(row, "used_at"),
    }),
  );

function passkeyIn(row: Row): Passkey {
  const algorithm = PASSKEY_ALGORITHMS.find((known) => known === textIn(row, "algorithm"));
  if (algorithm === undefined) throw new Error("A passkey of no known kind");
  return {
    id: textIn(row, "id"),
    publicKey: textIn(row, "public_key"),
    algorithm,
    counter: numberIn(row, "counter"),
    transports: JSON.parse(textIn(row, "transports")),
  };
}
