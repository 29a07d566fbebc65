import { type RiseKnown, type SetBeforeLock, setBeforeLock } from "#shared/job/set-before-lock.ts";
import type { SettingEntry, SheetStepId } from "#shared/job/sheet-entry.ts";
import type { SheetCase } from "#shared/job/sheet-standing.ts";
import { type AdviceAsk, adviseNut, adviseShims } from "#shared/slip/bench-advice.ts";
import type { SetNutClutch, ShimStackClutch } from "#shared/slip/clutch-data.ts";
import type { Band } from "#shared/slip/conformity.ts";
import type { RiseSpreads } from "#shared/slip/lock-nut-rise.ts";
import { provableAim, provableHundredths, provableMeans } from "#shared/slip/provable-means.ts";
import type { ReadingLevels } from "#shared/slip/reading-rules.ts";
import { roundTo } from "#shared/units/round-to.ts";

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
  const planned = settingTarget(plan, step);
  if (planned === null || plan.aim === null) return null;
  const means = provableMeans(plan.aim.band, entry.tool, plan.levels);
  const shift = provableAim(plan.aim.target, means) - plan.aim.target;
  const targetLbfFt = planned + shift;
  const ask: AdviceAsk = { ...entry, targetLbfFt, coverage: plan.levels.coverage };
  const { clutch } = plan;
  const { says } = step === "shims" ? adviseShims(clutch.shimStack, ask) : adviseNut(clutch.setNut, ask);
  return means === null || shift === 0 ? says : `${sayProvable(means, targetLbfFt)} ${says}`;
}

/** What to aim for instead where the wrench cannot prove the target itself. */
function sayProvable(means: Band, aim: number): string {
  const { low, high } = provableHundredths(means);
  return (
    `This wrench can prove a final slip of ${low} to ${high} lbf·ft, not the target itself: ` +
    `so set ${roundTo(aim, 1)} lbf·ft here.`
  );
}
