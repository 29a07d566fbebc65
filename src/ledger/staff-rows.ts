import type { Staff, StaffRole } from "#shared/shop/staff.ts";
import type { StaffAccount } from "#shared/shop/staff-account.ts";
import { passkeysOf } from "#src/ledger/passkey-rows.ts";
import { firstRow, numberIn, numberOrNullIn, type Row, rowsOf, textIn } from "#src/ledger/row.ts";
import { devicesOf } from "#src/ledger/session-rows.ts";
import { staffIn } from "#src/ledger/staff-columns.ts";
import type { Turn } from "#src/ledger/turn.ts";

type NewStaff = { readonly handle: string; readonly name: string; readonly role: StaffRole };

export function addStaff(sql: SqlStorage, { handle, name, role }: NewStaff, now: number): Staff {
  const query = "INSERT INTO staff (handle, name, role, added_at) VALUES (?, ?, ?, ?) RETURNING id, name, role";
  const row = firstRow(sql, query, handle, name, role, now);
  if (row === undefined) throw new Error("An account was not added");
  return staffIn(row);
}

/** Somebody who works here now. */
export function findStaff(sql: SqlStorage, id: number): (Staff & { readonly handle: string }) | null {
  const row = firstRow(sql, "SELECT id, name, role, handle FROM staff WHERE id = ? AND left_at IS NULL", id);
  return row === undefined ? null : { ...staffIn(row), handle: textIn(row, "handle") };
}

/** The manager who has been there longest. */
export function firstManager(sql: SqlStorage): Staff | null {
  const query = "SELECT id, name, role FROM staff WHERE role = 'manager' AND left_at IS NULL ORDER BY id LIMIT 1";
  const row = firstRow(sql, query);
  return row === undefined ? null : staffIn(row);
}

export const countManagers = (sql: SqlStorage): number =>
  rowsOf(sql, "SELECT id FROM staff WHERE role = 'manager' AND left_at IS NULL").length;

/** Histories know people by name, so nobody gets the name of another, not even of one who left. */
export function isNameTaken(sql: SqlStorage, name: string, but: number | null): boolean {
  const key = name.toLowerCase();
  return rowsOf(sql, "SELECT id, name FROM staff").some(
    (row) => numberIn(row, "id") !== but && textIn(row, "name").toLowerCase() === key,
  );
}

/** All who work or worked here, those who left last. */
export const allAccounts = (turn: Turn): readonly StaffAccount[] =>
  rowsOf(turn.sql, "SELECT * FROM staff ORDER BY left_at IS NOT NULL, id").map((row) => accountIn(turn, row));

export function findAccount(turn: Turn, id: number): StaffAccount | null {
  const row = firstRow(turn.sql, "SELECT * FROM staff WHERE id = ?", id);
  return row === undefined ? null : accountIn(turn, row);
}

const accountIn = (turn: Turn, row: Row): StaffAccount => ({
  ...staffIn(row),
  addedAt: numberIn(row, "added_at"),
  leftAt: numberOrNullIn(row, "left_at"),
  passkeys: passkeysOf(turn.sql, numberIn(row, "id")),
  devices: devicesOf(turn, numberIn(row, "id")),
});
