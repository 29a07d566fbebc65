import type { Owner } from "#tests/support/owner-walk.ts";

const DAY_MS = 86_400_000;

/** A calendar date counted back from today, so that no owner grows old. */
export const daysAgo = (days: number): string => new Date(Date.now() - days * DAY_MS).toISOString().slice(0, 10);

export const yearsAgo = (years: number): string => String(Number(daysAgo(0).slice(0, 4)) - years);

/** The dull case: a young unmodified craft, ridden gently, never serviced, nothing noticed. */
export const NOT_DUE: Owner = {
  who: "A gentle rider",
  says: {
    symptoms: { nothing: "yes" },
    unitFamily: { choice: "set-nut" },
    builtYear: { value: yearsAgo(1) },
    engineHours: { value: "60" },
    riding: { choice: "easy" },
    engineModified: { choice: "no" },
    chargerModified: { choice: "no" },
    lastRebuild: { when: "never" },
    lastSlipSet: { when: "never" },
    washers: { choice: "metal" },
  },
  verdict: "Not due yet",
};

export const SLIP_CHECK: Owner = {
  who: "A tuner",
  says: {
    ...NOT_DUE.says,
    chargerModified: { choice: "yes" },
    boost: { value: "1,1", unit: "bar" },
    changedSinceSlip: { choice: "no" },
    lastRebuild: { when: "known", date: daysAgo(200), hours: "20" },
    lastSlipSet: { when: "unknown" },
  },
  verdict: "It needs a slip check",
};

export const FULL_REBUILD: Owner = {
  who: "A second owner",
  says: {
    symptoms: { choice: "whine", notLooked: "yes" },
    unitFamily: { choice: "unknown" },
    builtYear: { value: yearsAgo(6) },
    engineHours: { notSure: "yes" },
    riding: { choice: "mixed" },
    engineModified: { choice: "unknown" },
    chargerModified: { choice: "no" },
    lastRebuild: { when: "unknown" },
    lastSlipSet: { when: "unknown" },
    washers: { choice: "unknown" },
  },
  verdict: "It needs a full rebuild",
};

export const STOP_RIDING: Owner = {
  who: "An owner of an early craft",
  says: {
    symptoms: { choice: ["grinding", "metal-in-oil"] },
    unitFamily: { choice: "shim-stack" },
    builtYear: { value: "2009" },
    engineHours: { value: "212.5" },
    riding: { choice: "hard" },
    engineModified: { choice: "no" },
    chargerModified: { choice: "no" },
    lastRebuild: { when: "known", hours: "140" },
    lastSlipSet: { when: "known", date: daysAgo(90) },
    washers: { choice: "ceramic" },
    washersAgain: { choice: "ceramic" },
  },
  verdict: "Stop riding now",
};
