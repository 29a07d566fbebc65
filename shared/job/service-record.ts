import { canonicalJson } from "#shared/basics/canonical-json.ts";
import { unitSerial } from "#shared/craft/unit-serial.ts";
import type { BenchFindings } from "#shared/job/bench-findings.ts";
import { nextDue } from "#shared/job/record-next.ts";
import { rulesUsed } from "#shared/job/record-rules.ts";
import type { MeasuredSlip, Service } from "#shared/job/record-schema.ts";
import { measuredSlip, slipTaken } from "#shared/job/record-slip.ts";
import type { BenchCase } from "#shared/job/sheet-case.ts";
import { type BenchSheet, INSPECTED_PARTS, SHEET_STEPS, type SheetEntry } from "#shared/job/sheet-entry.ts";
import type { SettingsVersion } from "#shared/shop/shop-settings.ts";
import type { Reason } from "#shared/triage/judge.ts";

/** All that a service's record is made of. Nothing of the owner comes in, so nothing of the owner can get into it. */
export type RecordInput = {
  /** As the owner typed it. */
  readonly serial: string | null;
  readonly bench: BenchCase;
  readonly sheet: BenchSheet;
  readonly findings: BenchFindings | null;
  readonly parts: Service["parts"];
  readonly settings: SettingsVersion;
  /** The shop's calendar date. */
  readonly onDate: string;
  /** Who ships it, by name. */
  readonly sealedBy: string | null;
};

/** The record of one service, from what the bench wrote down. Torques in lbf·ft. */
export function serviceRecord({ serial, bench, sheet, findings, parts, settings, ...made }: RecordInput): Service {
  const { answers, aim, levels, slip, work, unitFamily } = bench;
  const { onDate: date, sealedBy } = made;
  const { engineHours } = answers;
  const entryOf = (step: keyof BenchSheet) => sheet[step]?.entry;
  const measured = (step: "as-found-slip" | "final-slip") => {
    const taken = slipTaken(entryOf(step));
    return taken && measuredSlip(taken, step === "final-slip" ? aim : null, levels);
  };
  const left = measured("final-slip");
  const done = { date, engineHours, rebuilt: work !== "slip-check", slipSet: isSet(left) };
  return {
    unit: { family: unitFamily, serial: unitSerial(serial) },
    date,
    engineHours,
    work,
    settingsVersion: settings.version,
    found: {
      slip: measured("as-found-slip"),
      parts: partsFound(entryOf("inspect")),
      needles: needlesIn(entryOf("needles-out")),
      findings: findings && {
        engineDebris: findings.engineDebris,
        reasons: findings.reasons.map(said),
        nextSteps: findings.nextSteps.map(said),
      },
    },
    steps: stepsTaken(sheet),
    left: {
      slip: left,
      target: aim?.target ?? null,
      band: aim && { low: aim.band.low, high: aim.band.high },
      needles: needlesIn(entryOf("needles-in")),
      rise: riseSeen(sheet, left),
    },
    parts: [...parts],
    worked: namesOf(sheet, sealedBy),
    rules: rulesUsed({ basis: slip.basis, answers, read: left !== null }, settings.settings.triage),
    next: nextDue(answers, done, settings.settings.triage),
    note: null,
  };
}

/** A slip that was read and lies outside the band, or was not read, does not start the clock. */
export const isSet = (left: MeasuredSlip | null): boolean => left !== null && left.decision?.is !== "reject";

const said = ({ rule, text, source }: Reason) => ({ rule, text, source });

function partsFound(entry: SheetEntry | undefined): Service["found"]["parts"] {
  if (entry?.kind !== "inspect") return [];
  return INSPECTED_PARTS.flatMap((part) => {
    const seen = entry.parts[part];
    return seen === undefined ? [] : [{ part, condition: seen.condition, note: seen.note }];
  });
}

const needlesIn = (entry: SheetEntry | undefined): number | null => (entry?.kind === "count" ? entry.needles : null);

function stepsTaken(sheet: BenchSheet): Service["steps"] {
  return SHEET_STEPS.flatMap((step) => {
    const entry = sheet[step]?.entry;
    if (entry === undefined) return [];
    return [{ step, was: entry.kind === "skipped" ? "skipped" : "done", note: noteOf(entry) }];
  });
}

/** A slip's and a part's notes stand beside them. */
function noteOf(entry: SheetEntry): string | null {
  if (entry.kind === "skipped" || entry.kind === "count") return entry.why;
  return entry.kind === "done" ? entry.note : null;
}

/** What tightening the lock nut did, where the slip was read with the same tool before and after; a click tool reads none. */
function riseSeen(sheet: BenchSheet, left: MeasuredSlip | null): Service["left"]["rise"] {
  const before = sheet["slip-before-lock"]?.entry;
  const last = before?.kind === "setting" ? before.tries.at(-1) : undefined;
  if (before?.kind !== "setting" || last === undefined || left?.uncertainty == null) return null;
  const sameTool = canonicalJson(before.tool) === canonicalJson(left.tool);
  const tightened = sheet["lock-nut"]?.entry.kind === "done";
  return sameTool && tightened && left.tool.kind !== "click" ? { before: last.slip, after: left.mean } : null;
}

function namesOf(sheet: BenchSheet, sealedBy: string | null): string[] {
  const names = SHEET_STEPS.flatMap((step) => sheet[step]?.by ?? []);
  return [...new Set(sealedBy === null ? names : [...names, sealedBy])];
}
