import { DEFAULT, FROM_MEMORY, published, type Source } from "#shared/basics/source.ts";

export const IMPELLER_ALLOYS = ["2618-T61", "6061-T6", "7075-T6", "unknown"] as const;
export type ImpellerAlloy = (typeof IMPELLER_ALLOYS)[number];

/** So many hours at a temperature were borne with the yield strength still above its minimum. */
export type SoakLimit = { readonly celsius: number; readonly hours: number };

export type AlloyFacts = {
  /** Linear expansion between 20 and 100 °C, 1/K. */
  readonly expansionPerK: number;
  readonly expansionSource: Source;
  /** Hottest that the impeller may be made, °C. */
  readonly ceilingC: number;
  readonly ceilingSource: Source;
  /** Coolest first; empty where no such trial is known. */
  readonly soakLimits: readonly SoakLimit[];
};

const CALLISTER = published("W. D. Callister, Fundamentals of Materials Science and Engineering, 3rd ed., Table B.6");

/**
 * Age-hardened aluminium loses strength in heat for good. The ceilings are this project's, well under the temperatures
 * at which these alloys are aged or were seen to weaken; an alloy that is not known gets the least of each.
 */
export const ALLOY_FACTS: Readonly<Record<ImpellerAlloy, AlloyFacts>> = {
  "2618-T61": {
    expansionPerK: 22.3e-6,
    expansionSource: FROM_MEMORY,
    ceilingC: 150,
    ceilingSource: DEFAULT,
    soakLimits: [],
  },
  "6061-T6": {
    expansionPerK: 23.6e-6,
    expansionSource: CALLISTER,
    ceilingC: 150,
    ceilingSource: DEFAULT,
    // M. Donovan and others, California Polytechnic State University, 2015: extrusions heated again, hours in the oven.
    soakLimits: [
      { celsius: 177, hours: 64 },
      { celsius: 199, hours: 16 },
      { celsius: 218, hours: 4 },
    ],
  },
  "7075-T6": {
    expansionPerK: 23.4e-6,
    expansionSource: CALLISTER,
    ceilingC: 120,
    ceilingSource: DEFAULT,
    soakLimits: [],
  },
  unknown: {
    expansionPerK: 21.5e-6, // cast 356.0, the least in that table
    expansionSource: CALLISTER,
    ceilingC: 120,
    ceilingSource: DEFAULT,
    soakLimits: [],
  },
};

/** Steel shaft, 1/K: W. D. Callister, as above, plain carbon steel 1020 (from memory). */
export const STEEL_EXPANSION_PER_K = 11.7e-6;
