import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import type { EngineDebris } from "#shared/triage/engine-debris.ts";

/** What the links between the shop's pages are called together. */
export const SHOP_NAV = "Shop";

export const SHOP_JOB_STATE: Readonly<Record<JobState, string>> = {
  booked: "Booked",
  cancelled: "Cancelled",
  received: "Received",
  "on-bench": "On the bench",
  "owner-to-decide": "Owner to decide",
  "part-to-come": "Part to come",
  set: "Set, ready to ship",
  "set-aside": "Set aside",
  shipped: "Shipped",
  "returned-unrepaired": "Returned unrepaired",
  closed: "Closed",
};

/** The work that is booked, in two or three words for a list. */
export const SHOP_WORK: Readonly<Record<BenchJob, string>> = {
  "slip-check": "Slip check",
  "full-rebuild": "Full rebuild",
  "stop-riding": "Inspection, then rebuild",
};

/** What the bench does about parts that may have gone into the engine. */
export const SHOP_DEBRIS: Readonly<Record<EngineDebris, { readonly word: string; readonly means: string }>> = {
  unlikely: {
    word: "Unlikely",
    means: "Nothing points to parts in the engine.",
  },
  possible: {
    word: "Possible",
    means:
      "The engine must not run before it has been looked at. If parts are missing from the unit, the engine must be opened and cleaned before a rebuilt unit goes on.",
  },
  likely: {
    word: "Likely",
    means:
      "The engine must not run. It must be opened and cleaned by someone competent before a rebuilt unit goes on. The price does not include that.",
  },
};
