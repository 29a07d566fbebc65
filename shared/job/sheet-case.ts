import type { Answers } from "#shared/craft/vocabulary.ts";
import type { BenchSheet, InspectEntry } from "#shared/job/sheet-entry.ts";
import type { SheetCase } from "#shared/job/sheet-standing.ts";
import { type AgreedWork, workNow } from "#shared/shop/agreed-work.ts";
import type { JobPlan } from "#shared/shop/job-plan.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { type SlipPlan, slipPlan } from "#shared/slip/slip-plan.ts";

/** A job as the sheet sees it: what the owner said, what was planned from it, and what was approved since. */
export type PlannedJob = { readonly answers: Answers; readonly plan: JobPlan; readonly agreed: AgreedWork | null };

/** The sheet's case, with the slip plan that holds now that the unit is open. */
export type BenchCase = SheetCase & { readonly slip: SlipPlan; readonly answers: Answers };

/** What the bench found outdoes what the owner said: the plan is then made anew, by today's settings. */
export function benchCase(job: PlannedJob, sheet: BenchSheet, settings: ShopSettings): BenchCase {
  const { answers, plan } = job;
  const found = answersFound(answers, sheet);
  const slip = found === answers ? plan.slip : slipPlan(found, settings.slip);
  return {
    work: workNow(job).work,
    unitFamily: found.unitFamily,
    needles: settings.bench.needles[found.unitFamily],
    aim: slip.target === null || slip.band === null ? null : { target: slip.target.value, band: slip.band },
    levels: settings.slip,
    slip,
    answers: found,
  };
}

/** The unit's serial number: as read on the bench, or else as its owner gave it. */
export const serialKnown = (said: string | null, sheet: BenchSheet): string | null => inspected(sheet)?.serial ?? said;

function answersFound(said: Answers, sheet: BenchSheet): Answers {
  const { unitFamily, boostPsi } = inspected(sheet) ?? { unitFamily: null, boostPsi: null };
  const family = unitFamily ?? said.unitFamily;
  const boost = boostPsi ?? said.mods.boostPsi;
  if (family === said.unitFamily && boost === said.mods.boostPsi) return said;
  return { ...said, unitFamily: family, mods: { ...said.mods, boostPsi: boost } };
}

function inspected(sheet: BenchSheet): InspectEntry | null {
  const entry = sheet.inspect?.entry;
  return entry?.kind === "inspect" ? entry : null;
}
