import type { SheetCase } from "#shared/job/sheet-standing.ts";
import {
  beforeLockLearnt,
  type LearntRise,
  learnRise,
  type RiseObservation,
  type RiseSpreads,
} from "#shared/slip/lock-nut-rise.ts";
import { lbfft } from "#shared/units/torque.ts";

/** Slip to set before the lock nut on this job, lbf·ft, and what the shop has learnt of the rise. */
export type SetBeforeLock = {
  readonly set: number;
  readonly low: number;
  readonly high: number;
  readonly rise: LearntRise;
};

/** What the shop takes the rise to be, and what it has seen of it. No library here: the browser's script reads this file too. */
export type RiseKnown = {
  readonly slip: { readonly lockNutRise: number; readonly coverage: number };
  readonly setNut: RiseSpreads;
  readonly rises: readonly RiseObservation[];
};

/** Null where there is no target, or no lock nut whose rise is known: only a set-nut unit has one. */
export function setBeforeLock(
  { aim, unitFamily }: Pick<SheetCase, "aim" | "unitFamily">,
  { slip, setNut, rises }: RiseKnown,
): SetBeforeLock | null {
  if (aim === null || unitFamily !== "set-nut") return null;
  const prior = { mean: slip.lockNutRise, riseSd: setNut.riseSd, riseObservationSd: setNut.riseObservationSd };
  const learnt = learnRise(rises, prior, slip.coverage);
  // What does not fit the shop's own spreads is shown, and not gone by.
  const rise = learnt.doubtful ? { ...learnRise([], prior, slip.coverage), ...seen(learnt) } : learnt;
  const { set, low, high } = beforeLockLearnt(lbfft(aim.target), rise);
  return { set: set.value, low: low.value, high: high.value, rise };
}

const seen = ({ counted, outliers, doubtful }: LearntRise) => ({ counted, outliers, doubtful });
