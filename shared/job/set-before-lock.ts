import type { BenchCase } from "#shared/job/sheet-case.ts";
import type { ClutchSettings } from "#shared/slip/clutch-settings.ts";
import { beforeLockLearnt, type LearntRise, learnRise, type RiseObservation } from "#shared/slip/lock-nut-rise.ts";
import type { SlipSettings } from "#shared/slip/slip-settings.ts";
import { lbfft } from "#shared/units/torque.ts";

/** Slip to set before the lock nut on this job, lbf·ft, and what the shop has learnt of the rise. */
export type SetBeforeLock = {
  readonly set: number;
  readonly low: number;
  readonly high: number;
  readonly rise: LearntRise;
};

type Learning = {
  readonly slip: SlipSettings;
  readonly setNut: ClutchSettings["setNut"];
  readonly rises: readonly RiseObservation[];
};

/** Null where there is no target, or no lock nut whose rise is known: only a set-nut unit has one. */
export function setBeforeLock({ aim, unitFamily }: BenchCase, { slip, setNut, rises }: Learning): SetBeforeLock | null {
  if (aim === null || unitFamily !== "set-nut") return null;
  const prior = { mean: slip.lockNutRise, riseSd: setNut.riseSd, riseObservationSd: setNut.riseObservationSd };
  const learnt = learnRise(rises, prior, slip.coverage);
  // What does not fit the shop's own spreads is shown, and not gone by.
  const rise = learnt.doubtful ? { ...learnRise([], prior, slip.coverage), ...counted(learnt) } : learnt;
  const { set, low, high } = beforeLockLearnt(lbfft(aim.target), rise);
  return { set: set.value, low: low.value, high: high.value, rise };
}

const counted = ({ counted, outliers, doubtful }: LearntRise) => ({ counted, outliers, doubtful });
