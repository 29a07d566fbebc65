import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import { partsFor } from "#shared/shop/parts.ts";
import { quote } from "#shared/shop/prices.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";

type Offering = { readonly work: BenchJob /** Null = the shop's own price. */; readonly priceMinor: number | null };

/** The work that an owner is asked to approve, by the shop's settings of now. The price is firm: no "from" any more. */
export function offeredWork(
  { answers, plan }: Pick<Job, "answers" | "plan">,
  { work, priceMinor }: Offering,
  settings: ShopSettings,
): AgreedWork {
  const { unitFamily } = answers;
  const listed = quote(work, unitFamily, settings.prices);
  const ceramic = plan.parts.some(({ part }) => part === "friction-washers-for-ceramic");
  return {
    work,
    benchMinutes: settings.calendar.minutes[work],
    quote: { ...listed, minor: priceMinor ?? listed.minor, from: false },
    parts: partsFor({ work, unitFamily, ceramic }),
  };
}

/** May the shop go ahead without asking? Only within what the owner said, in the money that it was said in. */
export const withinGoAhead = (
  { goAheadMinor, plan }: Pick<Job, "goAheadMinor" | "plan">,
  offered: AgreedWork,
): boolean =>
  goAheadMinor !== null && offered.quote.currency === plan.quote.currency && offered.quote.minor <= goAheadMinor;
