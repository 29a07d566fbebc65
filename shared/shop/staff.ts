/** Who may do what: the bench works on jobs, a manager also changes settings, prices and accounts. */
export const STAFF_ROLES = ["bench", "manager"] as const;
export type StaffRole = (typeof STAFF_ROLES)[number];

/** Somebody who works at the shop. */
export type Staff = { readonly id: number; readonly name: string; readonly role: StaffRole };

/** The first account's name until its holder writes another. */
export const FIRST_STAFF_NAME = "Manager";
