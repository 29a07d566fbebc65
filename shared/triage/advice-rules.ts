import { DEFAULT, type Source } from "#shared/basics/source.ts";
import type { Symptom } from "#shared/craft/vocabulary.ts";
import type { Findings } from "#shared/triage/findings.ts";

/** Advice goes with a verdict and never changes it. */
export type AdviceRule = {
  readonly id: string;
  readonly when: (it: Findings) => boolean;
  readonly says: string;
  readonly source: Source;
};

const WORN_OR_LEAKING: readonly Symptom[] = ["whine", "burnt-smell", "oil-in-intake"];

export const ADVICE_RULES: readonly AdviceRule[] = [
  {
    id: "do-not-ride-until-seen",
    when: (it) => it.symptoms.some((symptom) => WORN_OR_LEAKING.includes(symptom)),
    says: "Do not ride until it has been seen.",
    source: DEFAULT,
  },
  {
    id: "read-the-engine-fault-first",
    when: (it) => it.symptoms.includes("limp-mode"),
    says: "Have the engine's own fault code read first. Limp mode has many causes.",
    source: DEFAULT,
  },
  {
    id: "look-at-the-oil",
    when: (it) => it.notLooked,
    says: "Look at the oil before the next ride. If it glitters, do not start the engine.",
    source: DEFAULT,
  },
];
