import type { Photo } from "#shared/job/photo.ts";
import { type BenchCase, benchCase } from "#shared/job/sheet-case.ts";
import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import type { FormFields } from "#shared/job/sheet-fields.ts";
import { type SheetPlan, sheetPlan } from "#shared/job/sheet-plan.ts";
import { type SheetStanding, sheetStanding } from "#shared/job/sheet-standing.ts";
import type { SheetView } from "#shared/job/sheet-view.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";

/** All that the bench sheet's page shows, worked out once. */
export type SheetModel = {
  readonly job: Job;
  readonly front: ShopSettings["front"];
  readonly view: SheetView;
  readonly case: BenchCase;
  readonly plan: SheetPlan;
  readonly standing: SheetStanding;
  /** The step that stands open; null = none. */
  readonly current: SheetStepId | null;
  /** Photos of the job; null where photos are switched off. */
  readonly photos: readonly Photo[] | null;
  readonly mayWrite: boolean;
  /** Who is at work, by name. */
  readonly staff: string;
  readonly newKey: () => string;
  /** What the calculators were asked, by the address. */
  readonly asked: FormFields;
};

type Shown = {
  readonly job: Job;
  readonly view: SheetView;
  readonly settings: ShopSettings;
  readonly photos: readonly Photo[] | null;
  readonly staff: string;
  /** The step that was asked for; otherwise the first that wants something. */
  readonly step: SheetStepId | null;
  readonly newKey: () => string;
  readonly asked: FormFields;
};

export function sheetModel({ job, view, settings, photos, staff, step: wanted, newKey, asked }: Shown): SheetModel {
  const it = benchCase(job, view.sheet, settings);
  const standing = sheetStanding(it, view.sheet);
  return {
    job,
    front: settings.front,
    view,
    case: it,
    plan: sheetPlan(it, { slip: settings.slip, clutch: settings.clutch, rises: view.rises }),
    standing,
    photos,
    current: standing.steps.find(({ step }) => step.id === wanted)?.step.id ?? standing.missing[0] ?? null,
    mayWrite: job.state === "on-bench" || job.state === "received",
    staff,
    newKey,
    asked,
  };
}
