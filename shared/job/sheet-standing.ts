import { unreachable } from "#shared/basics/unreachable.ts";
import type {
  BenchSheet,
  CountEntry,
  InspectEntry,
  SheetEntry,
  SheetStepId,
  SlipEntry,
} from "#shared/job/sheet-entry.ts";
import { partsToInspect, type SheetStep, type SheetWork, stepsFor } from "#shared/job/sheet-steps.ts";
import type { Band } from "#shared/slip/conformity.ts";
import type { ReadingLevels } from "#shared/slip/reading-rules.ts";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { FEWEST_READINGS } from "#shared/slip/torque-tool.ts";

/** What a sheet is judged by. */
export type SheetCase = SheetWork & {
  /** Needle bearings that this family has; null = what is counted out is taken. */
  readonly needles: number | null;
  /** The final slip aimed for, lbf·ft; null = the plan gives none yet. */
  readonly aim: { readonly target: number; readonly band: Band } | null;
  readonly levels: ReadingLevels;
};

/** Why a step is not done. */
export type OpenBecause =
  | "nothing-written"
  | "too-few-readings"
  | "click-tool"
  | "slip-over-band"
  | "slip-under-band"
  | "slip-not-proved"
  | "no-target"
  | "parts-not-judged"
  | "needles-not-known"
  | "needles-differ";

/** `needs-why`: it stays open until a reason is written down. */
export type StepStanding = {
  readonly step: SheetStep;
  readonly standing: "open" | "needs-why" | "done" | "skipped";
  readonly because: OpenBecause | null;
};
export type SheetStanding = {
  readonly steps: readonly StepStanding[];
  readonly complete: boolean;
  /** The steps that still want something, in order. */
  readonly missing: readonly SheetStepId[];
};

/** Where every step of a sheet stands, and whether the whole is complete. */
export function sheetStanding(it: SheetCase, sheet: BenchSheet): SheetStanding {
  const steps = stepsFor(it).map((step) => stepStanding(step, it, sheet));
  const missing = steps.filter(({ standing }) => standing === "open" || standing === "needs-why");
  return { steps, complete: missing.length === 0, missing: missing.map(({ step }) => step.id) };
}

function stepStanding(step: SheetStep, it: SheetCase, sheet: BenchSheet): StepStanding {
  const entry = sheet[step.id]?.entry;
  if (entry === undefined) return { step, standing: "open", because: "nothing-written" };
  if (entry.kind === "skipped") return { step, standing: "skipped", because: null };
  const lack = lackOf(entry, step.id, it, sheet);
  if (lack === null) return { step, standing: "done", because: null };
  const excused = lack.whyWillDo && "why" in entry && isSaid(entry.why);
  const standing = excused ? "done" : lack.whyWillDo ? "needs-why" : "open";
  return { step, standing, because: lack.because };
}

/** What an entry falls short of, and whether a reason makes up for it. */
type Lack = { readonly because: OpenBecause; readonly whyWillDo: boolean } | null;
const must = (because: OpenBecause): Lack => ({ because, whyWillDo: false });
const unlessSaid = (because: OpenBecause): Lack => ({ because, whyWillDo: true });

function lackOf(
  entry: Exclude<SheetEntry, { kind: "skipped" }>,
  id: SheetStepId,
  it: SheetCase,
  sheet: BenchSheet,
): Lack {
  switch (entry.kind) {
    case "slip":
      return id === "final-slip"
        ? lackOfProof(entry, it)
        : entry.readings.length === 0
          ? must("too-few-readings")
          : null;
    case "inspect":
      return lackOfParts(entry, it);
    case "count":
      return id === "needles-out" ? lackOfNeedlesOut(entry, it) : lackOfNeedlesIn(entry, it, sheet);
    case "setting":
      return entry.tries.length === 0 ? must("too-few-readings") : null;
    case "done":
      return null;
    default:
      return unreachable(entry);
  }
}

/** The breakaway peak is not looked at: it is not the slip. */
function lackOfProof({ readings, tool }: SlipEntry, { aim, levels }: SheetCase): Lack {
  if (tool.kind === "click") return must("click-tool");
  if (readings.length < FEWEST_READINGS) return must("too-few-readings");
  if (aim === null) return unlessSaid("no-target");
  const { decision, mean } = slipReading({ ...aim, readings, tool }, levels);
  if (decision === "accept") return null;
  if (decision === "not-proved") return unlessSaid("slip-not-proved");
  return must(mean > aim.band.high ? "slip-over-band" : "slip-under-band");
}

function lackOfParts({ parts }: InspectEntry, it: SheetCase): Lack {
  return partsToInspect(it).every((part) => parts[part] !== undefined) ? null : must("parts-not-judged");
}

const lackOfNeedlesOut = ({ needles }: CountEntry, it: SheetCase): Lack =>
  it.needles === null || needles === it.needles ? null : unlessSaid("needles-differ");

/** What goes in is the family's number; where that is not known, what came out. */
function lackOfNeedlesIn({ needles }: CountEntry, it: SheetCase, sheet: BenchSheet): Lack {
  const out = sheet["needles-out"]?.entry;
  const due = it.needles ?? (out?.kind === "count" ? out.needles : null);
  if (due === null) return unlessSaid("needles-not-known");
  return needles === due ? null : unlessSaid("needles-differ");
}

const isSaid = (why: string | null): boolean => why !== null && why.trim() !== "";
