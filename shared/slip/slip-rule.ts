import type { Source } from "#shared/basics/source.ts";
import type { Answers, Mods } from "#shared/craft/vocabulary.ts";
import type { SlipSettings } from "#shared/slip/slip-settings.ts";

/** What the slip plan reads of an owner's answers. */
export type SlipCraft = Pick<Answers, "unitFamily" | "riding"> & {
  readonly mods: Pick<Mods, "engine" | "charger" | "boostPsi">;
};

/** What every rule may look at. */
export type SlipFacts = SlipCraft & {
  readonly settings: SlipSettings;
  /** Most slip ever planned for this unit family, lbf·ft. */
  readonly ceiling: number;
};

/** A final slip to aim for and the limits it may end between, lbf·ft. */
export type SlipAim = { readonly target: number; readonly low: number; readonly high: number };

/** What every rule has: when it holds, how it is said to the shop, and where it comes from. */
export type SlipRule<Id extends string> = {
  readonly id: Id;
  readonly when: (it: SlipFacts) => boolean;
  readonly text: string;
  readonly source: Source;
};

/** The first rule of a table that holds; a table whose rules leave a gap is a bug. */
export function firstMatch<Rule extends SlipRule<string>>(rules: readonly Rule[], facts: SlipFacts): Rule {
  const rule = rules.find(({ when }) => when(facts));
  if (rule === undefined) throw new Error("No slip rule holds: the table has a gap");
  return rule;
}
