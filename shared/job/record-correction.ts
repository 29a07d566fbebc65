import { unitSerial } from "#shared/craft/unit-serial.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { nextDue } from "#shared/job/record-next.ts";
import type { MeasuredSlip, Service } from "#shared/job/record-schema.ts";
import { measuredSlip, type SlipAim } from "#shared/job/record-slip.ts";
import { isSet } from "#shared/job/service-record.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";

/** What of a record may be put right: things written down wrong. What was decided follows from them anew. */
export type ServiceCorrection = {
  readonly serial: string | null;
  readonly engineHours: number | null;
  /** Empty where that slip was not read: readings cannot be made up later. */
  readonly foundReadings: readonly number[];
  readonly leftReadings: readonly number[];
  readonly parts: Service["parts"];
  readonly note: string | null;
};

/** A manager's wish to put a record right. */
export type CorrectionWish = {
  readonly number: string;
  /** Hash of the record that the form showed. */
  readonly ifHash: string;
  /** Who of the staff, by name. */
  readonly staff: string;
  readonly why: string;
  readonly change: ServiceCorrection;
};
export type CorrectionRefusal = { readonly reason: "no-record" } | { readonly reason: "changed-meanwhile" };

type CorrectedBy = {
  readonly answers: Answers;
  /** Of the version that the record names: a correction is no reason to judge by other rules. */
  readonly settings: Pick<ShopSettings, "slip" | "triage">;
};

/** The service as it should have been recorded. */
export function correctedService(service: Service, change: ServiceCorrection, by: CorrectedBy): Service {
  const { found, left, date, work } = service;
  const { engineHours } = change;
  const again = (slip: MeasuredSlip | null, readings: readonly number[], aim: SlipAim | null) =>
    slip && measuredSlip({ ...slip, readings, why: slip.note }, aim, by.settings.slip);
  const aim = left.target === null || left.band === null ? null : { target: left.target, band: left.band };
  const leftSlip = again(left.slip, change.leftReadings, aim);
  const done = { date, engineHours, rebuilt: work !== "slip-check", slipSet: isSet(leftSlip) };
  return {
    ...service,
    unit: { ...service.unit, serial: unitSerial(change.serial) },
    engineHours,
    found: { ...found, slip: again(found.slip, change.foundReadings, null) },
    left: {
      ...left,
      slip: leftSlip,
      rise: left.rise && leftSlip && { before: left.rise.before, after: leftSlip.mean },
    },
    parts: change.parts.filter(({ count }) => count > 0),
    next: nextDue(by.answers, done, by.settings.triage),
    note: change.note,
  };
}
