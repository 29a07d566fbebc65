import type { Answers, Mods, RememberedService } from "#shared/craft/vocabulary.ts";

/** The day of every example that does not name another. */
export const ON_DATE = "2027-05-01";

export const NEVER: RememberedService = { when: "never", date: null, engineHours: null, slipLeftAt: null };
export const FORGOTTEN: RememberedService = { ...NEVER, when: "unknown" };

/** A service that the owner remembers; `null` = that part of it not. */
export const done = (date: string | null, engineHours: number | null): RememberedService => ({
  when: "known",
  date,
  engineHours,
  slipLeftAt: null,
});

export const STANDARD: Mods = { engine: false, charger: false, boostPsi: null, changedSinceSlip: false };
export const modified = (change: Partial<Mods>): Mods => ({ ...STANDARD, ...change });

/**
 * The dull case: a set-nut unit, new in 2026, 40 h, ridden gently, nothing noticed. On {@link ON_DATE} nothing is due,
 * and its slip is past the hours in which it would be "freshly set".
 */
export const aCraft = (change: Partial<Answers> = {}): Answers => ({
  unitFamily: "set-nut",
  builtYear: 2026,
  engineHours: 40,
  riding: "easy",
  mods: STANDARD,
  lastRebuild: NEVER,
  lastSlipSet: NEVER,
  washers: "metal",
  symptoms: [],
  notLooked: false,
  ...change,
});
