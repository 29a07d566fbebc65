import { type RiseKnown, type SetBeforeLock, setBeforeLock } from "#shared/job/set-before-lock.ts";
import type { SettingEntry, SheetStepId } from "#shared/job/sheet-entry.ts";
import type { SheetCase } from "#shared/job/sheet-standing.ts";
import { type AdviceAsk, adviseNut, adviseShims } from "#shared/slip/bench-advice.ts";
import type { SetNutClutch, ShimStackClutch } from "#shared/slip/clutch-data.ts";
import type { RiseSpreads } from "#shared/slip/lock-nut-rise.ts";
import type { ReadingLevels } from "#shared/slip/reading-rules.ts";

/** What page and script work out live figures from. Plain data, as it is handed to the script. */
export type SheetPlan = {
  readonly unitFamily: SheetCase["unitFamily"];
  readonly aim: SheetCase["aim"];
  readonly levels: ReadingLevels;
  readonly clutch: Clutches;
  /** Null where no lock nut's rise is known. */
  readonly beforeLock: SetBeforeLock | null;
};

type Clutches = { readonly setNut: SetNutClutch & RiseSpreads; readonly shimStack: ShimStackClutch };
type Planning = Pick<RiseKnown, "slip" | "rises"> & { readonly clutch: Clutches };

/** The figures that a job's sheet goes by. */
export function sheetPlan(it: SheetCase, { slip, clutch, rises }: Planning): SheetPlan {
  const { riskAllowed, rejectFrom, coverage } = it.levels;
  return {
    unitFamily: it.unitFamily,
    aim: it.aim,
    levels: { riskAllowed, rejectFrom, coverage },
    clutch,
    beforeLock: setBeforeLock(it, { slip, setNut: clutch.setNut, rises }),
  };
}

/** What to set at a step, lbf·ft; null where the plan cannot say: a unit of unknown build is set neither way. */
export function settingTarget({ unitFamily, aim, beforeLock }: SheetPlan, step: SheetStepId): number | null {
  if (step === "slip-before-lock") return beforeLock?.set ?? null;
  return unitFamily === "shim-stack" ? (aim?.target ?? null) : null;
}

/**
 * Where to go after the tries so far, in words; null where there is nothing to aim for.
 * @example adviceText(plan, "slip-before-lock", { tries: [], tool }) // "Two readings at two places are needed …"
 */
export function adviceText(
  plan: SheetPlan,
  step: SheetStepId,
  entry: Pick<SettingEntry, "tries" | "tool">,
): string | null {
  const targetLbfFt = settingTarget(plan, step);
  if (targetLbfFt === null) return null;
  const ask: AdviceAsk = { ...entry, targetLbfFt, coverage: plan.levels.coverage };
  const { clutch } = plan;
  return (step === "shims" ? adviseShims(clutch.shimStack, ask) : adviseNut(clutch.setNut, ask)).says;
}
