import { DEFAULT, PRACTICE, type Source } from "#shared/basics/source.ts";
import type { Symptom } from "#shared/craft/vocabulary.ts";

/** A part that may have failed: what points to it, what is said to the bench, what it did to the engine. */
export type Suspect = {
  readonly id: string;
  readonly failure: string;
  readonly debris: string;
  readonly source: Source;
  /** The owner's symptoms that point to it; never empty. */
  readonly pointedToBy: readonly Symptom[];
};

type SuspectRule = Omit<Suspect, "pointedToBy"> & {
  readonly shownBy: readonly Symptom[];
  /** Shown by these too, where the washers may be ceramic. */
  readonly ifCeramic?: readonly Symptom[];
};

const ENGINE_OPEN = "Yes: engine out, apart and cleaned";

/** How a charger fails and how each failure shows; worst for the engine first. */
export const SUSPECT_RULES: readonly SuspectRule[] = [
  {
    id: "drive-gear",
    failure: "Drive gear has lost teeth or shattered",
    shownBy: ["sudden-boost-loss", "grinding", "metal-in-oil"],
    debris: ENGINE_OPEN,
    source: PRACTICE,
  },
  {
    id: "slip-too-high",
    failure: "Gear or shaft broken under a sudden load, with the slip set far too high",
    shownBy: ["sudden-boost-loss"],
    debris: ENGINE_OPEN,
    source: PRACTICE,
  },
  {
    id: "needle-bearings",
    failure: "Needle bearings have scattered",
    shownBy: ["grinding", "metal-in-oil"],
    debris: ENGINE_OPEN,
    source: PRACTICE,
  },
  {
    id: "friction-washer",
    failure: "Friction washer has broken",
    shownBy: ["sudden-boost-loss", "metal-in-oil"],
    ifCeramic: ["gradual-boost-loss"],
    debris: ENGINE_OPEN,
    source: PRACTICE,
  },
  {
    id: "ball-bearing",
    failure: "Ball bearing is failing: its cage turns brittle with age, then breaks",
    shownBy: ["impeller-wobble", "grinding"],
    debris: "Usually not: it stays in the charger; impeller and housing are lost",
    source: PRACTICE,
  },
  {
    id: "washers-worn",
    failure: "Friction washers are worn and the slip is low",
    shownBy: ["gradual-boost-loss"],
    debris: "No",
    source: PRACTICE,
  },
  {
    id: "clutch-runs-hot",
    failure: "Clutch slips and runs hot: look for discoloured gear and shaft",
    shownBy: ["burnt-smell"],
    debris: "No",
    source: DEFAULT,
  },
  {
    id: "worn-bearing-or-gear",
    failure: "Bearings or gear are worn",
    shownBy: ["whine"],
    debris: "No",
    source: DEFAULT,
  },
  {
    id: "shaft-seal",
    failure: "Shaft seal or a bearing lets oil past",
    shownBy: ["oil-in-intake"],
    debris: "No",
    source: DEFAULT,
  },
  {
    id: "outside-the-charger",
    failure: "The fault may lie outside the charger: read the engine's own fault code first",
    shownBy: ["limp-mode"],
    debris: "No",
    source: DEFAULT,
  },
];

/**
 * What the symptoms point to, worst for the engine first. A hint for the bench; the verdict never reads it.
 * @example suspectsFor(["impeller-wobble"], false) // the ball bearing
 */
export function suspectsFor(symptoms: readonly Symptom[], mayBeCeramic: boolean): readonly Suspect[] {
  return SUSPECT_RULES.flatMap(({ shownBy, ifCeramic = [], ...suspect }) => {
    const shows = mayBeCeramic ? [...shownBy, ...ifCeramic] : shownBy;
    const pointedToBy = shows.filter((symptom) => symptoms.includes(symptom));
    return pointedToBy.length > 0 ? [{ ...suspect, pointedToBy }] : [];
  });
}
