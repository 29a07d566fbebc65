import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { JobPlan } from "#shared/shop/job-plan.ts";
import type { Part } from "#shared/shop/parts.ts";
import type { Quote } from "#shared/shop/prices.ts";

/** Work on a unit with all that follows from it: bench time, price, parts. */
export type AgreedWork = {
  readonly work: BenchJob;
  readonly benchMinutes: number;
  readonly quote: Quote;
  readonly parts: readonly Part[];
};

type Agreeing = { readonly plan: JobPlan; readonly agreed: AgreedWork | null };

/** The work that a job is about now: what was approved last, or else what the owner was told at the booking. */
export const workNow = ({ plan, agreed }: Agreeing): AgreedWork =>
  agreed ?? { work: plan.quote.work, benchMinutes: plan.benchMinutes, quote: plan.quote, parts: plan.parts };
