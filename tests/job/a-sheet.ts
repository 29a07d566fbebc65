import { type BenchSheet, INSPECTED_PARTS, type SheetEntry, type SheetStepId } from "#shared/job/sheet-entry.ts";
import type { SheetCase } from "#shared/job/sheet-standing.ts";
import { type SheetWork, stepsFor } from "#shared/job/sheet-steps.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";

export const DIGITAL: TorqueTool = { kind: "electronic", accuracyPercent: 1, resolution: 0.05 };
export const CLICK: TorqueTool = { kind: "click", accuracyPercent: 4, resolution: 0.5 };

/** A full rebuild of a set-nut unit for 18 lbf·ft, needles as counted out. */
export const aCase = (change: Partial<SheetCase> = {}): SheetCase => ({
  work: "full-rebuild",
  unitFamily: "set-nut",
  needles: null,
  aim: { target: 18, band: { low: 17.5, high: 18.1 } },
  levels: SLIP_DEFAULTS,
  ...change,
});

/** What a bench writes where nothing is out of the way. */
export const DULL_ENTRIES: Readonly<Record<SheetStepId, SheetEntry>> = {
  "as-found-slip": { kind: "slip", readings: [15.2], breakaway: 17, tool: DIGITAL, why: null },
  inspect: {
    kind: "inspect",
    parts: Object.fromEntries(INSPECTED_PARTS.map((part) => [part, { condition: "good" as const, note: null }])),
    unitFamily: null,
    boostPsi: null,
    serial: null,
  },
  "needles-out": { kind: "count", needles: 40, why: null },
  "needles-in": { kind: "count", needles: 40, why: null },
  "spring-washers": { kind: "done", note: null },
  "plate-recess": { kind: "done", note: null },
  screws: { kind: "done", note: null },
  impeller: { kind: "done", note: null },
  shims: { kind: "setting", tries: [{ nutDegrees: null, shimMm: 1.2, slip: 17.9, loosened: false }], tool: DIGITAL },
  "slip-before-lock": {
    kind: "setting",
    tries: [{ nutDegrees: 300, shimMm: null, slip: 16.4, loosened: false }],
    tool: DIGITAL,
  },
  "lock-nut": { kind: "done", note: null },
  "final-slip": { kind: "slip", readings: [17.8, 17.85, 17.8], breakaway: null, tool: DIGITAL, why: null },
  "turn-by-hand": { kind: "done", note: "No rub" },
};

export const asStored = (entries: Readonly<Partial<Record<SheetStepId, SheetEntry>>>): BenchSheet =>
  Object.fromEntries(
    Object.entries(entries).map(([step, entry]) => [
      step,
      { step: step as SheetStepId, version: 1, at: 0, by: "Sedge Hallow", entry },
    ]),
  );

/** Every step that the work needs, dully done, with changes. */
export const aSheet = (
  work: SheetWork = aCase(),
  change: Readonly<Partial<Record<SheetStepId, SheetEntry>>> = {},
): BenchSheet => asStored({ ...Object.fromEntries(stepsFor(work).map(({ id }) => [id, DULL_ENTRIES[id]])), ...change });
