import { STAFF_EVENTS, type StaffEvent } from "#shared/shop/staff-account.ts";
import { numberIn, rowsOf, textIn, textOrNullIn } from "#src/ledger/row.ts";

export function noteStaffEvent(sql: SqlStorage, { at, staff, what, about }: StaffEvent): void {
  sql.exec("INSERT INTO staff_event (at, staff, what, about) VALUES (?, ?, ?, ?)", at, staff, what, about);
}

/** As many as somebody would read through. */
const MOST_SHOWN = 200;

/** The newest first. */
export const newestStaffEvents = (sql: SqlStorage): readonly StaffEvent[] =>
  rowsOf(sql, "SELECT at, staff, what, about FROM staff_event ORDER BY step DESC LIMIT ?", MOST_SHOWN).map((row) => ({
    at: numberIn(row, "at"),
    staff: textOrNullIn(row, "staff"),
    what: eventIn(textIn(row, "what")),
    about: textOrNullIn(row, "about"),
  }));

function eventIn(text: string): StaffEvent["what"] {
  const what = STAFF_EVENTS.find((known) => known === text);
  if (what === undefined) throw new Error("An event of no known kind");
  return what;
}
