import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { hoursNow, riddenSince } from "#shared/life/hours-now.ts";
import { type HoursSpan, hoursBetween, sinceTheLast, upTo } from "#shared/life/hours-span.ts";

/** How far the two clocks of a unit have run. */
export type ServiceClock = {
  readonly sinceRebuild: HoursSpan;
  readonly sinceSlipSet: HoursSpan;
  /** Engine hours at the last rebuild and slip setting, taken as early as they may have been; null where nothing tells. */
  readonly rebuiltAtHours: number | null;
  readonly slipSetAtHours: number | null;
  /** The date that the months count from; null where neither a rebuild's date nor the year built is known. */
  readonly monthsFrom: string | null;
};

/**
 * Reads the clocks off what the owner remembers. Whatever is not known is taken as the whole range that is plausible:
 * no service at all, or any number of hours from 0 to `hoursPerYear` for each year since the date that is known.
 */
export function serviceClock(answers: Answers, onDate: string, hoursPerYear: number): ServiceClock {
  const { engineHours, builtYear, lastRebuild, lastSlipSet } = answers;
  const now = hoursNow(answers, onDate, hoursPerYear);
  const order = slipAfterRebuild(lastRebuild, lastSlipSet);
  const { sinceRebuild, sinceSlipSet } = inOrder(
    order,
    hoursSince(lastRebuild, now, onDate, hoursPerYear),
    hoursSince(lastSlipSet, now, onDate, hoursPerYear),
  );
  const rebuiltAt = lastRebuild.when === "known" ? lastRebuild.engineHours : 0;
  const slipSetAt = order === "no" ? rebuiltAt : highest(rebuiltAt, lastSlipSet.engineHours);
  return {
    sinceRebuild,
    sinceSlipSet,
    rebuiltAtHours: engineHours === null ? rebuiltAt : hoursBetween(sinceRebuild.most, engineHours),
    slipSetAtHours: engineHours === null ? slipSetAt : hoursBetween(sinceSlipSet.most, engineHours),
    monthsFrom: lastRebuild.date ?? (builtYear === null ? null : `${builtYear}-01-01`),
  };
}

type Order = "yes" | "no" | "perhaps";

/** Was the slip set after the rebuild, which sets it too? By the dates; "perhaps" where they do not tell. */
function slipAfterRebuild(rebuild: RememberedService, slip: RememberedService): Order {
  if (slip.when === "never") return "no";
  if (slip.when === "unknown") return "perhaps";
  if (rebuild.when === "never") return "yes";
  if (rebuild.date === null || slip.date === null || rebuild.date === slip.date) return "perhaps";
  return slip.date > rebuild.date ? "yes" : "no";
}

function hoursSince(service: RememberedService, now: HoursSpan, onDate: string, hoursPerYear: number): HoursSpan {
  if (service.when === "never") return now;
  const { date, engineHours } = service;
  if (engineHours !== null) {
    return { least: hoursBetween(engineHours, now.least), most: hoursBetween(engineHours, now.most) };
  }
  return upTo(date === null ? now.most : Math.min(riddenSince(date, onDate, hoursPerYear), now.most));
}

/** A rebuild sets the slip too: the later of the two counts, and it cannot lie further back than the earlier. */
function inOrder(
  order: Order,
  rebuild: HoursSpan,
  slip: HoursSpan,
): Pick<ServiceClock, "sinceRebuild" | "sinceSlipSet"> {
  switch (order) {
    case "no": {
      const sinceRebuild = notBefore(slip, rebuild);
      return { sinceRebuild, sinceSlipSet: sinceRebuild };
    }
    case "yes":
      return { sinceRebuild: notAfter(slip, rebuild), sinceSlipSet: notBefore(rebuild, slip) };
    case "perhaps":
      return { sinceRebuild: rebuild, sinceSlipSet: sinceTheLast(rebuild, slip) };
  }
}

/** The hours since the later of two, which lie no further back than the earlier. */
const notBefore = (earlier: HoursSpan, { least, most }: HoursSpan): HoursSpan => ({
  least,
  most: Math.max(least, Math.min(most, earlier.most)),
});

/** The hours since the earlier of two, which lie at least as far back as the later. */
const notAfter = (later: HoursSpan, { least, most }: HoursSpan): HoursSpan => ({
  least: Math.max(least, later.least),
  most: Math.max(most, later.least),
});

const highest = (one: number | null, other: number | null): number | null =>
  one === null || other === null ? (one ?? other) : Math.max(one, other);
