import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { EngineDebris } from "#shared/triage/engine-debris.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** The verdict as a headline, and what it means in one or two sentences. */
export const VERDICT_WORDS: Readonly<Record<Verdict, { readonly title: string; readonly means: string }>> = {
  "stop-riding": {
    title: "Stop riding now",
    means: "Do not start the engine. Send us the unit before anything else breaks.",
  },
  "full-rebuild": {
    title: "It needs a full rebuild",
    means: "Best not to ride until it is done. Washers and bearings are past their time, and a failure costs far more.",
  },
  "slip-check": {
    title: "It needs a slip check",
    means:
      "Ride gently until it is done, and stop if anything changes. The clutch is measured and set again: a short job.",
  },
  "not-due": {
    title: "Not due yet",
    means: "Nothing that you told us speaks against riding. You may still book a slip check.",
  },
};

/** The verdict in two or three words, for a tag or a list. */
export const VERDICT_SHORT: Readonly<Record<Verdict, string>> = {
  "stop-riding": "Stop riding",
  "full-rebuild": "Full rebuild",
  "slip-check": "Slip check",
  "not-due": "Not due",
};

export const WORK_WORDS: Readonly<Record<BenchJob, string>> = {
  "slip-check": "Slip check and setting",
  "full-rebuild": "Full rebuild and slip setting",
  "stop-riding": "Inspection first, then full rebuild and slip setting",
};

/** What a failed charger may have done to the engine, for stop-riding cases. */
export const DEBRIS_WORDS: Readonly<Record<EngineDebris, string>> = {
  likely:
    "Parts have likely gone into the engine. Do not run it. It must be opened and cleaned by someone competent before a rebuilt unit goes on.",
  possible:
    "Parts may have gone into the engine. Do not run it. Have it looked at. If parts went in, it must be opened and cleaned by someone competent before a rebuilt unit goes on.",
  unlikely: "Parts in the engine are unlikely. Still, do not run it until the unit has been seen.",
};

/** What the price does not hold. */
export const NOT_INCLUDED =
  "Not included: cleaning an engine that parts have gone into, taking the unit off the craft, and postage to us.";

/** What could be found out, by the field of the answers that is not known. */
export const FIND_OUT: Readonly<Record<string, string>> = {
  unitFamily: "how the clutch is built",
  builtYear: "the year built",
  engineHours: "the hours now",
  riding: "how it is ridden",
  "mods.engine": "whether the engine was modified",
  "mods.charger": "whether the charger was modified",
  "mods.changedSinceSlip": "whether it was changed since the slip was set",
  washers: "which washers it has",
  lastRebuild: "when it was last rebuilt",
  "lastRebuild.date": "the date of the last rebuild",
  "lastRebuild.engineHours": "the hours at the last rebuild",
  lastSlipSet: "when the slip was last set",
  "lastSlipSet.date": "the date the slip was last set",
  "lastSlipSet.engineHours": "the hours when the slip was last set",
};
