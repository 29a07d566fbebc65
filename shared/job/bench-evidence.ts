import { wallOf } from "#shared/calendar/zone-clock.ts";
import { benchCase } from "#shared/job/sheet-case.ts";
import {
  type BenchSheet,
  INSPECTED_PARTS,
  type InspectedPart,
  type PartCondition,
  type SheetEntry,
} from "#shared/job/sheet-entry.ts";
import { SEEN_FROM_OUTSIDE } from "#shared/job/sheet-steps.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { ceilingOf } from "#shared/slip/slip-plan.ts";
import { findingsOf } from "#shared/triage/findings.ts";
import type { Judgement } from "#shared/triage/judge.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";

/** A part as it was found; `unseen` where nobody has looked at it yet. */
export type PartFound = PartCondition | "unseen";

/** What the rules of the open unit look at. */
export type BenchEvidence = {
  /** False while nobody has looked inside. */
  readonly opened: boolean;
  readonly parts: Readonly<Record<InspectedPart, PartFound>>;
  readonly needles: {
    /** Null = not counted. */
    readonly counted: number | null;
    /** How many belong in a unit of this family; null = the shop has not said. */
    readonly belong: number | null;
  };
  /** As-found slip, mean of the readings, lbf·ft; null = not known. */
  readonly slip: number | null;
  /** Where the slip was planned to end, lbf·ft; null = no target yet. */
  readonly band: { readonly low: number; readonly high: number } | null;
  /** The most that a unit of this family is ever given, lbf·ft. */
  readonly ceiling: number;
  /** Hours since the slip was set, as few as they may be. */
  readonly hoursSinceSlipSet: number;
  readonly triage: TriageSettings;
  /** What the owner's answers led to. */
  readonly told: Judgement;
};

/** What of a job the findings rest on. */
export type FoundJob = Pick<Job, "answers" | "plan" | "agreed" | "bookedAt">;

/** Whoever judged one of these has the unit open; of a closed one the others are looked at from outside. */
const INSIDE = INSPECTED_PARTS.filter((part) => !SEEN_FROM_OUTSIDE.includes(part));

/** Reads the evidence off the bench sheet. What is not on it, or was skipped, is not known. */
export function benchEvidence(job: FoundJob, sheet: BenchSheet, settings: ShopSettings): BenchEvidence {
  const { unitFamily, needles, slip } = benchCase(job, sheet, settings);
  const inspected = sheet.inspect?.entry;
  const parts = inspected?.kind === "inspect" ? inspected.parts : {};
  const counted = countIn(sheet["needles-out"]?.entry);
  const bookedOn = wallOf(settings.calendar.zone, job.bookedAt).date;
  return {
    opened: counted !== null || INSIDE.some((part) => parts[part] !== undefined),
    parts: Object.fromEntries(INSPECTED_PARTS.map((part) => [part, parts[part]?.condition ?? "unseen"])) as Record<
      InspectedPart,
      PartFound
    >,
    needles: { counted, belong: needles },
    slip: slipIn(sheet["as-found-slip"]?.entry),
    band: slip.band,
    ceiling: ceilingOf(unitFamily, settings.slip),
    hoursSinceSlipSet: findingsOf(job.answers, bookedOn, settings.triage).sinceSlipSet.least,
    triage: settings.triage,
    told: job.plan.judgement,
  };
}

const countIn = (entry: SheetEntry | undefined): number | null => (entry?.kind === "count" ? entry.needles : null);

/** What a click wrench says is not the slip, so it is no evidence (common practice; ISO 6789-1 has its limits). */
function slipIn(entry: SheetEntry | undefined): number | null {
  if (entry?.kind !== "slip" || entry.tool.kind === "click" || entry.readings.length === 0) return null;
  return entry.readings.reduce((sum, reading) => sum + reading, 0) / entry.readings.length;
}
