import type { BenchEvidence, PartFound } from "#shared/job/bench-evidence.ts";
import { INSPECTED_PARTS, type InspectedPart } from "#shared/job/sheet-entry.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { aCraft, ON_DATE } from "#tests/support/a-craft.ts";

export const allParts = (found: PartFound): Record<InspectedPart, PartFound> =>
  Object.fromEntries(INSPECTED_PARTS.map((part) => [part, found])) as Record<InspectedPart, PartFound>;

/** The dull case: an open unit with all parts good, every needle there, the slip where it should be, nothing told. */
export const anInspection = (
  change: Partial<Omit<BenchEvidence, "parts">> & { readonly parts?: Partial<BenchEvidence["parts"]> } = {},
): BenchEvidence => ({
  opened: true,
  needles: { counted: 12, belong: 12 },
  slip: 12.5,
  band: { low: 12, high: 13 },
  ceiling: 18,
  hoursSinceSlipSet: 40,
  triage: TRIAGE_DEFAULTS,
  told: judge(aCraft(), ON_DATE, TRIAGE_DEFAULTS),
  ...change,
  parts: { ...allParts("good"), ...change.parts },
});

/** Nobody has looked inside. */
export const aClosedUnit = (change: Partial<BenchEvidence> = {}): BenchEvidence => ({
  ...anInspection({ opened: false, needles: { counted: null, belong: 12 }, slip: null }),
  parts: allParts("unseen"),
  ...change,
});
