import { PRACTICE } from "#shared/basics/source.ts";
import type { Findings } from "#shared/triage/findings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

export const ENGINE_DEBRIS = ["unlikely", "possible", "likely"] as const;
export type EngineDebris = (typeof ENGINE_DEBRIS)[number];

/** What the failures do to the engine is common practice; see the table in the shop's page of rules. */
export const ENGINE_DEBRIS_SOURCE = PRACTICE;

/** Has the charger thrown parts into the engine? Gear, needles and washers go in; a ball bearing usually stays outside. */
export function engineDebris({ symptoms, ceramic }: Findings, verdict: Verdict): EngineDebris {
  if (verdict !== "stop-riding") return "unlikely";
  const suddenly = symptoms.includes("sudden-boost-loss");
  const brokenGear = suddenly && symptoms.includes("grinding");
  const brokenWasher = ceramic && (suddenly || symptoms.includes("gradual-boost-loss"));
  if (symptoms.includes("metal-in-oil") || brokenGear || brokenWasher) return "likely";
  const wobbleAlone = symptoms.every((symptom) => symptom === "impeller-wobble");
  return wobbleAlone ? "unlikely" : "possible";
}
