import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import type { BookingWish } from "#shared/shop/booking.ts";
import { firstRow, numberIn, yesNoColumn } from "#src/ledger/row.ts";

/** The rows that a job points at. */
export type Subject = { readonly owner: number; readonly craft: number; readonly unit: number };

/** An owner, a craft and the unit in it are apart: owners have several craft, and units get swapped. */
export function keepSubject(sql: SqlStorage, wish: BookingWish, now: number): Subject {
  const owner = keepOwner(sql, wish, now);
  const craft = keepCraft(sql, owner, wish.answers);
  const unit = keepUnit(sql, craft, wish, now);
  keepService(sql, unit, "rebuild", wish.answers.lastRebuild, now);
  keepService(sql, unit, "slip-set", wish.answers.lastSlipSet, now);
  return { owner, craft, unit };
}

function keepOwner(sql: SqlStorage, { contact, reminders }: BookingWish, now: number): number {
  return idOf(
    sql,
    "INSERT INTO owner (name, phone, email, reminder_text, reminder_agreed_at) VALUES (?, ?, ?, ?, ?) RETURNING id",
    contact.name,
    contact.phone ?? null,
    contact.email ?? null,
    reminders?.text ?? null,
    reminders === null ? null : now,
  );
}

function keepCraft(sql: SqlStorage, owner: number, { builtYear, riding, mods }: Answers): number {
  return idOf(
    sql,
    `INSERT INTO craft (owner, built_year, riding, engine_modified, charger_modified, boost_psi)
     VALUES (?, ?, ?, ?, ?, ?) RETURNING id`,
    owner,
    builtYear,
    riding,
    yesNoColumn(mods.engine),
    yesNoColumn(mods.charger),
    mods.boostPsi,
  );
}

function keepUnit(sql: SqlStorage, craft: number, { answers, serial }: BookingWish, now: number): number {
  const query = "INSERT INTO unit (craft, fitted_at, family, serial, washers) VALUES (?, ?, ?, ?, ?) RETURNING id";
  return idOf(sql, query, craft, now, answers.unitFamily, serial, answers.washers);
}

/** The unit's clocks start from what the owner remembers, until the bench knows better. */
function keepService(sql: SqlStorage, unit: number, kind: string, service: RememberedService, now: number): void {
  if (service.when !== "known") return;
  sql.exec(
    `INSERT INTO service (unit, kind, told_at, told_by, date, engine_hours, slip_left_at)
     VALUES (?, ?, ?, 'owner', ?, ?, ?)`,
    unit,
    kind,
    now,
    service.date,
    service.engineHours,
    service.slipLeftAt,
  );
}

function idOf(sql: SqlStorage, query: string, ...values: readonly SqlStorageValue[]): number {
  const row = firstRow(sql, query, ...values);
  if (row === undefined) throw new Error("A row was not kept");
  return numberIn(row, "id");
}
