import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";

/** What the bench looks at when a unit is open. No library here: the browser's script reads this file too. */
export const INSPECTED_PARTS = [
  "friction-washers",
  "spring-washers",
  "needle-bearings",
  "drive-gear",
  "shaft",
  "ball-bearings",
  "seals",
  "retaining-plate",
  "housing",
  "impeller",
] as const;
export type InspectedPart = (typeof INSPECTED_PARTS)[number];

export const PART_CONDITIONS = ["good", "worn", "broken"] as const;
export type PartCondition = (typeof PART_CONDITIONS)[number];

/** Readings of the slip, lbf·ft, with the breakaway peak apart: it is never averaged in. */
export type SlipEntry = {
  readonly kind: "slip";
  readonly readings: readonly number[];
  readonly breakaway: number | null;
  readonly tool: TorqueTool;
  /** Why the slip is left as it is where the readings do not prove it; null = nothing said. */
  readonly why: string | null;
};

export type InspectEntry = {
  readonly kind: "inspect";
  readonly parts: Readonly<
    Partial<Record<InspectedPart, { readonly condition: PartCondition; readonly note: string | null }>>
  >;
  /** How the unit turns out to be built, where the bench can tell; null = as the owner said. */
  readonly unitFamily: Exclude<UnitFamily, "unknown"> | null;
  /** Peak boost as measured or asked, psi gauge, where the plan lacks it; null = as the owner said. */
  readonly boostPsi: number | null;
  /** Serial number as read on the unit, by which its earlier services are found; null = as the owner said. */
  readonly serial: string | null;
};

/** Needle bearings counted; `why` where the count is not what it should be. */
export type CountEntry = { readonly kind: "count"; readonly needles: number; readonly why: string | null };

/** One try at the setting: how far the nut was turned since it first took up the springs (degrees), or the shims put in (mm). */
export type SettingTry = {
  readonly nutDegrees: number | null;
  readonly shimMm: number | null;
  readonly slip: number;
  /** The nut came here by being backed off and was not brought up again: springs let go carry less at the same place. */
  readonly loosened: boolean;
};
export type SettingEntry = {
  readonly kind: "setting";
  readonly tries: readonly SettingTry[];
  readonly tool: TorqueTool;
};

export type DoneEntry = { readonly kind: "done"; readonly note: string | null };
export type SkippedEntry = { readonly kind: "skipped"; readonly why: string };

/** What the bench wrote down at one step. */
export type SheetEntry = SlipEntry | InspectEntry | CountEntry | SettingEntry | DoneEntry | SkippedEntry;

/** The steps of the bench sheet, in the order in which a full rebuild takes them. */
export const SHEET_STEPS = [
  "as-found-slip",
  "inspect",
  "needles-out",
  "needles-in",
  "spring-washers",
  "plate-recess",
  "screws",
  "impeller",
  "shims",
  "slip-before-lock",
  "lock-nut",
  "final-slip",
  "turn-by-hand",
] as const;
export type SheetStepId = (typeof SHEET_STEPS)[number];

/** A step's newest entry. Entries are appended, never edited; versions count from 1. */
export type StoredEntry = {
  readonly step: SheetStepId;
  readonly version: number;
  readonly at: number;
  /** Who wrote it, by name as it was then. */
  readonly by: string;
  readonly entry: SheetEntry;
};

/** The newest entry of each step that has one. */
export type BenchSheet = Readonly<Partial<Record<SheetStepId, StoredEntry>>>;
