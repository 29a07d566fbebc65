import type { EngineDebris } from "#shared/triage/engine-debris.ts";

/** What the bench found, on the owner's pages, the shop's and the record. */
export const FINDINGS = {
  title: "What the bench found",
  engine: "The engine",
  next: "What to do next",
} as const;

/** Said before anything else where it holds, so that it is not read past. */
export const ENGINE_STAYS_OFF = "Do not run the engine.";

/** The engine in one sentence; what follows from it stands in the steps. */
export const ENGINE_WORDS: Readonly<Record<EngineDebris, string>> = {
  likely: "Parts have likely gone into the engine.",
  possible: "Parts may have gone into the engine.",
  unlikely: "Parts in the engine are unlikely.",
};
