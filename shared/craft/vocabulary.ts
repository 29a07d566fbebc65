/** The words an owner's answers are made of. No library here: the browser's script reads this file too. */

export const UNIT_FAMILIES = ["shim-stack", "set-nut", "unknown"] as const;
export type UnitFamily = (typeof UNIT_FAMILIES)[number];

export const RIDING = ["easy", "mixed", "hard", "unknown"] as const;
export type Riding = (typeof RIDING)[number];

export const WASHERS = ["ceramic", "metal", "unknown"] as const;
export type Washers = (typeof WASHERS)[number];

export const SYMPTOMS = [
  "metal-in-oil",
  "grinding",
  "sudden-boost-loss",
  "gradual-boost-loss",
  "impeller-wobble",
  "whine",
  "burnt-smell",
  "limp-mode",
  "oil-in-intake",
] as const;
export type Symptom = (typeof SYMPTOMS)[number];

export const REMEMBERED = ["known", "never", "unknown"] as const;

/** A rebuild or a slip setting as the owner remembers it. `null` = not sure. */
export type RememberedService = {
  readonly when: (typeof REMEMBERED)[number];
  /** ISO 8601 calendar date. */
  readonly date: string | null;
  /** Engine hours at that service. */
  readonly engineHours: number | null;
  /** Slip it was left at, lbf·ft. Shown to the bench; no rule reads it. */
  readonly slipLeftAt: number | null;
};

/** `null` = not sure. */
export type Mods = {
  readonly engine: boolean | null;
  readonly charger: boolean | null;
  /** Peak boost of a modified charger, psi gauge. */
  readonly boostPsi: number | null;
  /** Were engine or charger modified after the slip was last set? */
  readonly changedSinceSlip: boolean | null;
};

/** All that triage and the slip plan read. `null` or "unknown" = not sure. */
export type Answers = {
  readonly unitFamily: UnitFamily;
  readonly builtYear: number | null;
  readonly engineHours: number | null;
  readonly riding: Riding;
  readonly mods: Mods;
  readonly lastRebuild: RememberedService;
  readonly lastSlipSet: RememberedService;
  readonly washers: Washers;
  /** What was noticed, in any order. */
  readonly symptoms: readonly Symptom[];
  /** True where the owner has not looked at the oil; changes advice, never the verdict. */
  readonly notLooked: boolean;
};
