import * as z from "zod";
import { benchJob } from "#shared/calendar/bench-job.ts";
import { BENCH_JOBS, type BenchJob } from "#shared/calendar/calendar-settings.ts";
import { UNIT_FAMILIES, type UnitFamily } from "#shared/craft/vocabulary.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

const Minor = z.int().min(0).max(100_000_000).describe("Price in the currency's minor unit (cents)");

export const PriceSettingsSchema = z.strictObject({
  /** ISO 4217. */
  currency: z.string().regex(/^[A-Z]{3}$/),
  byJob: z.record(z.enum(BENCH_JOBS), z.record(z.enum(UNIT_FAMILIES), Minor)),
  /** Working days a unit usually spends at the shop. */
  usualDays: z.record(z.enum(BENCH_JOBS), z.int().min(1).max(90)),
});
export type PriceSettings = z.infer<typeof PriceSettingsSchema>;

/** Invented for the demo shop; a real shop sets its own. */
export const DEMO_PRICES: PriceSettings = {
  currency: "USD",
  byJob: {
    "slip-check": { "shim-stack": 14_500, "set-nut": 12_500, unknown: 14_500 },
    "full-rebuild": { "shim-stack": 46_500, "set-nut": 42_500, unknown: 46_500 },
    "stop-riding": { "shim-stack": 59_500, "set-nut": 55_500, unknown: 59_500 },
  },
  usualDays: { "slip-check": 3, "full-rebuild": 5, "stop-riding": 8 },
};

/** What the owner is told before any name is asked, and what the job keeps. */
export type Quote = {
  readonly work: BenchJob;
  readonly minor: number;
  readonly currency: string;
  /** True where the bench may find more: the price is then a "from". */
  readonly from: boolean;
  readonly usualDays: number;
};

export function quote(verdict: Verdict, unitFamily: UnitFamily, settings: PriceSettings): Quote {
  const work = benchJob(verdict);
  return {
    work,
    minor: settings.byJob[work][unitFamily],
    currency: settings.currency,
    from: work !== "slip-check",
    usualDays: settings.usualDays[work],
  };
}
