import { DEFAULT, PRACTICE } from "#shared/basics/source.ts";
import type { SlipAim, SlipFacts, SlipRule } from "#shared/slip/slip-rule.ts";
import { around, standardAim } from "#shared/slip/standard-rules.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** A rule for a charger known to be modified. `null` = no target can be given; `"standard"` = as with a standard charger. */
export type ChargerRule = SlipRule<
  "boost-not-known" | "boost-over-ceiling" | "boost-decides" | "boost-below-standard"
> & {
  readonly aim: (it: SlipFacts) => SlipAim | "standard" | null;
  readonly caution?: string;
};

/** Read top to bottom; the first rule that holds wins. */
export const CHARGER_RULES: readonly ChargerRule[] = [
  {
    id: "boost-not-known",
    when: (it) => it.mods.boostPsi === null,
    aim: () => null,
    text: "Modified charger, boost not known: no target is guessed.",
    caution:
      "The charger is modified and its peak boost is not known. Measure it or ask for it before you set the slip.",
    source: DEFAULT,
  },
  {
    id: "boost-over-ceiling",
    when: (it) => boost(it) >= it.ceiling,
    aim: (it) => around(it.ceiling, it.settings),
    text: "Modified charger with high boost: the ceiling of the unit, not one for one. More breaks gears and shafts.",
    source: PRACTICE,
  },
  {
    id: "boost-decides",
    when: (it) => boost(it) > standardAim(it).target,
    aim: (it) => around(boost(it), it.settings),
    text: "Modified charger: about 1 lbf·ft for each psi of peak boost.",
    source: PRACTICE,
  },
  {
    id: "boost-below-standard",
    when: () => true,
    aim: () => "standard",
    text: "Modified charger with low boost: never less than with a standard charger.",
    source: DEFAULT,
  },
];

/** Peak boost to a hundredth of a psi, so that target and band come from the same number; no gauge reads finer. */
const boost = (it: SlipFacts): number => roundTo(it.mods.boostPsi ?? 0, 2);
