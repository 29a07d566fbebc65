import type { SlipEntry } from "#shared/job/sheet-entry.ts";
import type { SheetCase } from "#shared/job/sheet-standing.ts";
import { slipShown } from "#shared/job/slip-shown.ts";
import { type MeasuredSlip, type WearTrend, wearTrend } from "#shared/life/wear-trend.ts";

/** How a unit was left at its last service here. */
export type LastService = {
  readonly date: string;
  readonly engineHours: number | null;
  readonly left: MeasuredSlip | null;
};

/** As left then to as found now. Why there is no figure, where there is none. */
export type WearSince =
  | { readonly is: "known"; readonly hours: number; readonly trend: WearTrend }
  | { readonly is: "no-service" | "no-hours" | "too-few-readings" | "no-target" };

/**
 * What the clutch lost since its last service here, from that record and today's readings as found.
 * @param hoursNow engine hours as the owner gave them with this booking
 */
export function wearSince(
  it: Pick<SheetCase, "aim" | "levels">,
  { last, found, hoursNow }: { last: LastService | null; found: SlipEntry | null; hoursNow: number | null },
): WearSince {
  if (last === null || last.left === null) return { is: "no-service" };
  const hours = hoursNow === null || last.engineHours === null ? 0 : hoursNow - last.engineHours;
  if (hours <= 0) return { is: "no-hours" };
  if (it.aim === null) return { is: "no-target" };
  const reading = found === null ? null : slipShown(it, found).reading;
  if (reading === null) return { is: "too-few-readings" };
  const now = { lbfFt: reading.mean, uncertainty: reading.standardUncertainty };
  const trend = wearTrend([{ hours, left: last.left, found: now }], now, it.aim.band.low, it.levels.coverage);
  return { is: "known", hours, trend };
}
