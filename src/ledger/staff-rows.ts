import { STAFF_ROLES, type Staff, type StaffRole } from "#shared/shop/staff.ts";
import { firstRow, numberIn, type Row, textIn } from "#src/ledger/row.ts";

type NewStaff = { readonly handle: string; readonly name: string; readonly role: StaffRole };

export function addStaff(sql: SqlStorage, { handle, name, role }: NewStaff, now: number): Staff {
  const query = "INSERT INTO staff (handle, name, role, added_at) VALUES (?, ?, ?, ?) RETURNING id, name, role";
  const row = firstRow(sql, query, handle, name, role, now);
  if (row === undefined) throw new Error("An account was not added");
  return staffIn(row);
}

/** The manager who has been there longest. */
export function firstManager(sql: SqlStorage): Staff | null {
  const query = "SELECT id, name, role FROM staff WHERE role = 'manager' AND left_at IS NULL ORDER BY id LIMIT 1";
  const row = firstRow(sql, query);
  return row === undefined ? null : staffIn(row);
}

export const staffIn = (row: Row): Staff => ({
  id: numberIn(row, "id"),
  name: textIn(row, "name"),
  role: roleIn(row, "role"),
});

export function roleIn(row: Row, column: string): StaffRole {
  const text = textIn(row, column);
  const role = STAFF_ROLES.find((known) => known === text);
  if (role === undefined) throw new Error(`Column ${column} holds no role`);
  return role;
}
