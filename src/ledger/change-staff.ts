import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Staff } from "#shared/shop/staff.ts";
import type { StaffAccount, StaffChange, StaffChangeRefusal, StaffEventName } from "#shared/shop/staff-account.ts";
import type { StaffWish } from "#shared/shop/staff-wishes.ts";
import { removePasskey } from "#src/ledger/passkey-rows.ts";
import { closeSessionsOf } from "#src/ledger/session-rows.ts";
import { noteStaffEvent } from "#src/ledger/staff-event-rows.ts";
import { countManagers, findAccount, findStaff, isNameTaken } from "#src/ledger/staff-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Changes somebody's account. What is as wanted already is left alone, and the shop never loses its last manager. */
export function changeStaff(
  turn: Turn,
  { staff: id, by, change }: StaffWish,
): Outcome<StaffAccount, StaffChangeRefusal> {
  const staff = findStaff(turn.sql, id);
  if (staff === null) return refuse({ reason: "no-such-account" });
  const refusal = refusalOf(turn, staff, change);
  if (refusal !== null) return refuse({ reason: refusal });
  const event = apply(turn, staff, change);
  if (event !== null) noteStaffEvent(turn.sql, { at: turn.now, staff: by, ...event });
  const account = findAccount(turn, id);
  return account === null ? refuse({ reason: "no-such-account" }) : accept(account);
}

function refusalOf({ sql }: Turn, staff: Staff, change: StaffChange): StaffChangeRefusal["reason"] | null {
  const losesManager = change.what === "end" || (change.what === "set-role" && change.role !== "manager");
  if (losesManager && staff.role === "manager" && countManagers(sql) === 1) return "last-manager";
  return change.what === "rename" && isNameTaken(sql, change.name, staff.id) ? "name-taken" : null;
}

type Noted = { readonly what: StaffEventName; readonly about: string } | null;

function apply({ sql, now }: Turn, { id, name, role }: Staff, change: StaffChange): Noted {
  switch (change.what) {
    case "rename":
      if (change.name === name) return null;
      sql.exec("UPDATE staff SET name = ? WHERE id = ?", change.name, id);
      return { what: "renamed", about: `${name} → ${change.name}` };
    case "set-role":
      if (change.role === role) return null;
      sql.exec("UPDATE staff SET role = ? WHERE id = ?", change.role, id);
      return { what: "role-changed", about: `${name}: ${role} → ${change.role}` };
    case "end":
      sql.exec("UPDATE staff SET left_at = ? WHERE id = ?", now, id);
      closeSessionsOf(sql, id, { but: null });
      return { what: "account-ended", about: name };
    case "remove-passkey": {
      const label = removePasskey(sql, id, change.passkey);
      closeSessionsOf(sql, id, { passkey: change.passkey });
      return label === null ? null : { what: "passkey-removed", about: `${name}: ${label}` };
    }
    case "sign-out":
      closeSessionsOf(sql, id, { hash: change.device });
      return { what: "devices-signed-out", about: name };
    case "sign-out-all":
      closeSessionsOf(sql, id, { but: change.but });
      return { what: "devices-signed-out", about: name };
  }
}
