import { DEFAULT, PRACTICE } from "#shared/basics/source.ts";
import { firstMatch, type SlipAim, type SlipFacts, type SlipRule } from "#shared/slip/slip-rule.ts";
import type { SlipSettings } from "#shared/slip/slip-settings.ts";

/** A rule that sets the slip of a craft whose charger is standard, or is taken to be. */
export type StandardRule = SlipRule<"hard-or-modified" | "gentle" | "mixed-or-unknown"> & {
  readonly aim: (settings: SlipSettings) => SlipAim;
};

/** Read top to bottom; the first rule that holds wins. Only an engine known to be modified raises the slip. */
export const STANDARD_RULES: readonly StandardRule[] = [
  {
    id: "hard-or-modified",
    when: (it) => it.riding === "hard" || it.mods.engine === true,
    aim: ({ hardLow, hardHigh }) => middleOf(hardLow, hardHigh),
    text: "Standard charger, on a modified craft or ridden hard: the middle of the higher range. Check it more often.",
    source: PRACTICE,
  },
  {
    id: "gentle",
    when: (it) => it.riding === "easy",
    aim: ({ gentleLow, gentleHigh }) => middleOf(gentleLow, gentleHigh),
    text: "All standard and ridden gently: the middle of the lower range.",
    source: PRACTICE,
  },
  {
    id: "mixed-or-unknown",
    when: () => true,
    aim: (settings) => around(settings.mixedTarget, settings),
    text: "Standard charger, mixed or unknown riding: between the two ranges.",
    source: DEFAULT,
  },
];

/** The slip this craft would get with a standard charger. */
export const standardAim = (facts: SlipFacts): SlipAim => firstMatch(STANDARD_RULES, facts).aim(facts.settings);

/** A target with the shop's usual band: a little under is fine, over is not. */
export const around = (target: number, { bandUnder, bandOver }: SlipSettings): SlipAim => ({
  target,
  low: target - bandUnder,
  high: target + bandOver,
});

/** Where practice gives a range, the target is its middle and the band is the range. */
const middleOf = (low: number, high: number): SlipAim => ({ target: (low + high) / 2, low, high });
