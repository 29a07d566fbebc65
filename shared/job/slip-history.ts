import { recordCode } from "#shared/job/record-code.ts";
import type { MeasuredSlip, Service } from "#shared/job/record-schema.ts";
import type { SealedService } from "#shared/job/record-standing.ts";
import { type SlipPeriod, type WearTrend, wearTrend } from "#shared/life/wear-trend.ts";

/** A slip with half the width of its interval; null where too few readings give none. lbf·ft. */
export type SlipPoint = { readonly lbfFt: number; readonly expanded: number | null };

/** One service of a unit. */
export type UnitService = {
  readonly job: string;
  readonly code: string;
  readonly date: string;
  readonly engineHours: number | null;
  readonly work: Service["work"];
  readonly found: SlipPoint | null;
  readonly left: SlipPoint | null;
  readonly band: Service["left"]["band"];
};

export type SlipHistory = {
  /** Oldest first; the last one is the service that is looked at. */
  readonly services: readonly UnitService[];
  /** How the slip falls; null where no two services tell. */
  readonly trend: WearTrend | null;
};

/** All that is known of how a unit's slip was found and left, from its records, oldest first. */
export function slipHistory(records: readonly SealedService[]): SlipHistory {
  const services = records.map(({ hash, record: { job, service } }) => ({
    job,
    code: recordCode(job, hash),
    date: service.date,
    engineHours: service.engineHours,
    work: service.work,
    found: pointOf(service.found.slip),
    left: pointOf(service.left.slip),
    band: service.left.band,
  }));
  return { services, trend: trendOf(records.map(({ record }) => record.service)) };
}

const pointOf = (slip: MeasuredSlip | null): SlipPoint | null =>
  slip && { lbfFt: slip.mean, expanded: slip.uncertainty?.expanded ?? null };

function trendOf(services: readonly Service[]): WearTrend | null {
  const newest = services.at(-1);
  const left = newest?.left.slip;
  const now = weighed(left ?? null);
  if (newest?.left.band == null || left?.uncertainty == null || now === null) return null;
  const periods = services.slice(1).flatMap((service, index) => periodOf(services[index], service));
  return periods.length === 0 ? null : wearTrend(periods, now, newest.left.band.low, left.uncertainty.coverage);
}

/** From one service to the next, where both slips were read often enough and the hours are known. */
function periodOf(before: Service | undefined, after: Service): readonly SlipPeriod[] {
  const [left, found] = [weighed(before?.left.slip ?? null), weighed(after.found.slip)];
  if (before?.engineHours == null || after.engineHours === null || left === null || found === null) return [];
  return [{ hours: after.engineHours - before.engineHours, left, found }];
}

const weighed = (slip: MeasuredSlip | null) =>
  slip?.uncertainty ? { lbfFt: slip.mean, uncertainty: slip.uncertainty.standard } : null;
