import type { Answers, RememberedService, Riding, Symptom, UnitFamily, Washers } from "#shared/craft/vocabulary.ts";
import { type Pressure, pressure, pressureIn } from "#shared/units/pressure.ts";

export type YesNoUnknown = "yes" | "no" | "unknown";

/** What the owner has answered so far, by question. A missing key = not asked yet, or no longer asked. */
export type Draft = {
  readonly symptoms?: { readonly noticed: readonly Symptom[]; readonly notLooked: boolean };
  readonly unitFamily?: UnitFamily;
  readonly builtYear?: number | null;
  readonly engineHours?: number | null;
  readonly riding?: Riding;
  readonly engineModified?: YesNoUnknown;
  readonly chargerModified?: YesNoUnknown;
  /** Kept in the unit the owner gave it in. */
  readonly boost?: Pressure | null;
  readonly changedSinceSlip?: YesNoUnknown;
  readonly lastRebuild?: RememberedService;
  readonly lastSlipSet?: RememberedService;
  readonly washers?: Washers;
  /** Ceramic washers where they are not plausible are asked back once, then believed. */
  readonly washersAgain?: Washers;
};
export type QuestionId = keyof Draft;

const NOT_SURE: RememberedService = { when: "unknown", date: null, engineHours: null, slipLeftAt: null };

/** The draft as triage reads it. What was not answered is not known. */
export function answersFrom(draft: Draft): Answers {
  return {
    unitFamily: draft.unitFamily ?? "unknown",
    builtYear: draft.builtYear ?? null,
    engineHours: draft.engineHours ?? null,
    riding: draft.riding ?? "unknown",
    mods: {
      engine: yesOrNo(draft.engineModified),
      charger: yesOrNo(draft.chargerModified),
      boostPsi: draft.boost ? pressureIn("psi", draft.boost) : null,
      changedSinceSlip: draft.changedSinceSlip === undefined ? false : yesOrNo(draft.changedSinceSlip),
    },
    lastRebuild: draft.lastRebuild ?? NOT_SURE,
    lastSlipSet: draft.lastSlipSet ?? NOT_SURE,
    washers: draft.washersAgain ?? draft.washers ?? "unknown",
    symptoms: draft.symptoms?.noticed ?? [],
    notLooked: draft.symptoms?.notLooked ?? false,
  };
}

/**
 * The answers as a draft, to be looked at and changed: what {@link answersFrom} reads back as the same answers, as far as
 * the questions behind them are still asked.
 */
export function draftFrom({ mods, symptoms, notLooked, ...plain }: Answers): Draft {
  return {
    ...plain,
    symptoms: { noticed: symptoms, notLooked },
    engineModified: yesNoUnknown(mods.engine),
    chargerModified: yesNoUnknown(mods.charger),
    boost: mods.boostPsi === null ? null : pressure(mods.boostPsi, "psi"),
    changedSinceSlip: yesNoUnknown(mods.changedSinceSlip),
    washersAgain: plain.washers,
  };
}

const yesNoUnknown = (answer: boolean | null): YesNoUnknown => (answer === null ? "unknown" : answer ? "yes" : "no");

const yesOrNo = (answer: YesNoUnknown | undefined): boolean | null =>
  answer === undefined || answer === "unknown" ? null : answer === "yes";
