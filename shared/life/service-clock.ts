import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { yearsBetween } from "#shared/units/calendar-date.ts";

/** Engine hours that may have passed: one figure where all is known, a range where it is not. `most` may be Infinity. */
export type HoursSpan = { readonly least: number; readonly most: number };

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
  const { engineHours, lastRebuild, lastSlipSet } = answers;
  const ridden = (since: string): number => Math.max(0, yearsBetween(since, onDate) * hoursPerYear);
  const built = answers.builtYear === null ? null : `${answers.builtYear}-01-01`;
  const sinceNew = engineHours === null ? upTo(built === null ? Infinity : ridden(built)) : exactly(engineHours);
  const since = (service: RememberedService) => hoursSince(service, engineHours, sinceNew, ridden);

  const sinceRebuild = {
    known: () => since(lastRebuild),
    never: () => sinceNew,
    unknown: () => upTo(sinceNew.most),
  }[lastRebuild.when]();
  const governs = whichSetTheSlip(lastRebuild, lastSlipSet);
  const sinceSlipSet = {
    rebuild: () => sinceRebuild,
    slip: () => since(lastSlipSet),
    "the later": () => shorter(sinceRebuild, since(lastSlipSet)),
    "nobody knows": () => upTo(sinceRebuild.most),
  }[governs]();

  const rebuiltAt = lastRebuild.when === "known" ? lastRebuild.engineHours : 0;
  const slipSetAt = governs === "rebuild" || governs === "nobody knows" ? rebuiltAt : lastSlipSet.engineHours;
  return {
    sinceRebuild,
    sinceSlipSet,
    rebuiltAtHours: engineHours === null ? rebuiltAt : engineHours - sinceRebuild.most,
    slipSetAtHours: engineHours === null ? slipSetAt : engineHours - sinceSlipSet.most,
    monthsFrom: (lastRebuild.when === "known" ? lastRebuild.date : null) ?? built,
  };
}

const exactly = (hours: number): HoursSpan => ({ least: hours, most: hours });
const upTo = (hours: number): HoursSpan => ({ least: 0, most: hours });
const shorter = (one: HoursSpan, other: HoursSpan): HoursSpan => ({
  least: Math.min(one.least, other.least),
  most: Math.min(one.most, other.most),
});

function hoursSince(
  service: RememberedService,
  now: number | null,
  sinceNew: HoursSpan,
  ridden: (since: string) => number,
): HoursSpan {
  if (now !== null && service.engineHours !== null) return exactly(now - service.engineHours);
  if (service.date !== null) return upTo(Math.min(ridden(service.date), now ?? Infinity));
  return upTo(Math.max(0, sinceNew.most - (service.engineHours ?? 0)));
}

/** A rebuild sets the slip too, so a slip setting counts only where it is the later one. */
function whichSetTheSlip(rebuild: RememberedService, slip: RememberedService) {
  if (slip.when === "never") return "rebuild";
  if (slip.when === "unknown") return "nobody knows";
  if (rebuild.when === "never") return "slip";
  if (rebuild.date === null || slip.date === null || rebuild.date === slip.date) return "the later";
  return slip.date > rebuild.date ? "slip" : "rebuild";
}
