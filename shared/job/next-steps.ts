import { DEFAULT, FROM_MEMORY, PRACTICE, type Source } from "#shared/basics/source.ts";
import type { EngineDebris } from "#shared/triage/engine-debris.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

type Found = { readonly engineDebris: EngineDebris; readonly verdict: Verdict };

/** What the owner does next, as a table in the order in which it is done. */
export type NextStep = {
  readonly id: string;
  readonly when: (it: Found) => boolean;
  readonly says: string;
  readonly source: Source;
};

export const NEXT_STEPS: readonly NextStep[] = [
  {
    id: "engine-stays-off",
    when: (it) => it.engineDebris !== "unlikely",
    says: "Do not run the engine, not even for a moment.",
    source: PRACTICE,
  },
  {
    id: "engine-out-and-cleaned",
    when: (it) => it.engineDebris === "likely",
    says: "Have a licensed marine technician take the engine out, apart and clean it. Only then may a rebuilt unit go on.",
    source: PRACTICE,
  },
  {
    id: "engine-looked-at",
    when: (it) => it.engineDebris === "possible",
    says: "Have a licensed marine technician look for metal in the oil, the oil filter and the engine. If parts went in, the engine must come out, apart and be cleaned before a rebuilt unit goes on.",
    source: PRACTICE,
  },
  {
    id: "look-at-the-oil",
    when: (it) => it.engineDebris === "unlikely" && it.verdict === "stop-riding",
    says: "Before the unit goes back on, look at the oil and its filter. If there is metal, do not run the engine and call a licensed marine technician.",
    source: DEFAULT,
  },
  {
    id: "nothing-for-the-engine",
    when: (it) => it.engineDebris === "unlikely" && it.verdict !== "stop-riding",
    says: "You need do nothing to the engine: nothing points to parts in it.",
    source: PRACTICE,
  },
  {
    id: "charger-off",
    when: () => true,
    says: "While the charger is off, never start the engine. Keep its oil feed, drain and air openings plugged.",
    source: FROM_MEMORY,
  },
  {
    id: "refit",
    when: () => true,
    says: "When the unit is back, refit it with new seals and oil as the maker's manual says.",
    source: FROM_MEMORY,
  },
];
