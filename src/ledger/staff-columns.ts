import { STAFF_ROLES, type Staff } from "#shared/shop/staff.ts";
import { numberIn, type Row, textIn } from "#src/ledger/row.ts";

/** Somebody of the staff, from a row with their `id`, `name` and `role`. */
export function staffIn(row: Row): Staff {
  const text = textIn(row, "role");
  const role = STAFF_ROLES.find((known) => known === text);
  if (role === undefined) throw new Error("A role that is not known");
  return { id: numberIn(row, "id"), name: textIn(row, "name"), role };
}
