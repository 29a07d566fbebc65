/** What happened to accounts and settings, in these words; the sentences for them live with the messages. */
export type StaffEventName = "first-account";

type NewStaffEvent = {
  readonly at: number;
  /** Who did it, by name; null where the machine's own link did. */
  readonly staff: string | null;
  readonly what: StaffEventName;
  /** Whom or what it is about. */
  readonly about: string | null;
};

export function noteStaffEvent(sql: SqlStorage, { at, staff, what, about }: NewStaffEvent): void {
  sql.exec("INSERT INTO staff_event (at, staff, what, about) VALUES (?, ?, ?, ?)", at, staff, what, about);
}
