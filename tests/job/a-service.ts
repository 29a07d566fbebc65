import type { Answers } from "#shared/craft/vocabulary.ts";
import { type RecordInput, serviceRecord } from "#shared/job/service-record.ts";
import { benchCase } from "#shared/job/sheet-case.ts";
import type { BenchSheet } from "#shared/job/sheet-entry.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import { aSheet, type asStored, DIGITAL, DULL_ENTRIES } from "#tests/job/a-sheet.ts";
import { aCraft, ON_DATE } from "#tests/support/a-craft.ts";

/** A set-nut unit for 12 to 13 lbf·ft, whose slip was checked and set on {@link ON_DATE} at 40 h. */
export function aServiceInput(change: Partial<RecordInput> = {}, answers: Answers = aCraft()): RecordInput {
  const sheet = change.sheet ?? aGentleSheet();
  return {
    serial: "SN-0042",
    bench: benchCase({ answers, plan: planJob(answers, ON_DATE, DEMO_SHOP), agreed: null }, sheet, DEMO_SHOP),
    sheet,
    findings: null,
    parts: [],
    settings: { version: 1, savedAt: 0, settings: DEMO_SHOP },
    onDate: ON_DATE,
    sealedBy: "Wilma Bench",
    ...change,
  };
}

export const aService = (change: Partial<RecordInput> = {}, answers?: Answers) =>
  serviceRecord(aServiceInput(change, answers));

/** Read before and after, well within the band. */
export const aGentleSheet = (change: Parameters<typeof asStored>[0] = {}): BenchSheet =>
  aSheet(
    { work: "slip-check", unitFamily: "set-nut" },
    {
      "as-found-slip": { kind: "slip", readings: [10.8, 10.9, 10.85], breakaway: 12, tool: DIGITAL, why: null },
      "slip-before-lock": {
        ...DULL_ENTRIES["slip-before-lock"],
        tries: [{ nutDegrees: 250, shimMm: null, slip: 11, loosened: false }],
      } as never,
      "final-slip": { kind: "slip", readings: [12.5, 12.55, 12.5], breakaway: null, tool: DIGITAL, why: null },
      ...change,
    },
  );
