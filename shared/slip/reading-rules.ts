import { PRACTICE, published, type Source } from "#shared/basics/source.ts";
import { clickLimitPercent } from "#shared/slip/click-limit.ts";
import type { Band, Conformity } from "#shared/slip/conformity.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";
import { roundTo } from "#shared/units/round-to.ts";
import { lbfft } from "#shared/units/torque.ts";

export type SlipDecision = "accept" | "reject" | "not-proved";

/** The levels that a decision keeps to, each between 0 and 1; part of the shop's slip settings. */
export type ReadingLevels = {
  /** Chance of being over, or under, the band that is still accepted. */
  readonly riskAllowed: number;
  /** Chance of being over, or under, the band from which it is rejected. */
  readonly rejectFrom: number;
  /** Level of confidence of the expanded uncertainty. */
  readonly coverage: number;
};

/** All that a decision on readings looks at; torques in lbf·ft. */
export type ReadingFacts = {
  readonly tool: TorqueTool;
  readonly band: Band;
  readonly mean: number;
  readonly conformity: Conformity;
  /** How far inside a limit the mean must lie to be accepted. */
  readonly guardBand: number;
  readonly levels: ReadingLevels;
};

export type ReadingRule = {
  readonly id: "click-tool" | "accept" | "reject-over" | "reject-under" | "band-too-narrow" | "near-a-limit";
  readonly when: (it: ReadingFacts) => boolean;
  readonly decision: SlipDecision;
  readonly says: (it: ReadingFacts) => string;
  readonly source: Source;
};

const JCGM_106 = published("JCGM 106:2012, clauses 7 and 8");

/** Read top to bottom; the first rule that holds wins. The last one holds for everything. */
export const READING_RULES: readonly ReadingRule[] = [
  {
    id: "click-tool",
    when: (it) => it.tool.kind === "click",
    decision: "not-proved",
    says: sayClick,
    source: PRACTICE,
  },
  {
    id: "accept",
    when: ({ conformity: { below, above }, levels: { riskAllowed } }) => below <= riskAllowed && above <= riskAllowed,
    decision: "accept",
    says: (it) => `${sayChances(it)} Each may be ${percent(it.levels.riskAllowed)} at most, so the slip is accepted.`,
    source: JCGM_106,
  },
  {
    id: "reject-over",
    when: (it) => it.conformity.above >= it.levels.rejectFrom,
    decision: "reject",
    says: (it) => `${sayChances(it)} The slip is over the band.`,
    source: JCGM_106,
  },
  {
    id: "reject-under",
    when: (it) => it.conformity.below >= it.levels.rejectFrom,
    decision: "reject",
    says: (it) => `${sayChances(it)} The slip is under the band.`,
    source: JCGM_106,
  },
  {
    id: "band-too-narrow",
    when: (it) => 2 * it.guardBand > it.band.high - it.band.low,
    decision: "not-proved",
    says: (it) =>
      `${sayChances(it)} The band is ${shown(it.band.high - it.band.low)} wide, and the mean must lie ` +
      `${shown(it.guardBand)} inside each limit. No mean can do that: the readings or the tool are too coarse.`,
    source: JCGM_106,
  },
  {
    id: "near-a-limit",
    when: () => true,
    decision: "not-proved",
    says: (it) =>
      `${sayChances(it)} To be accepted, the mean must lie between ${shown(it.band.low + it.guardBand)} ` +
      `and ${shown(it.band.high - it.guardBand)} lbf·ft.`,
    source: JCGM_106,
  },
];

function sayClick({ band, mean }: ReadingFacts): string {
  const limit = clickLimitPercent(lbfft(mean));
  return (
    "A click wrench does not show the slip, so it proves nothing; use it for a first rough set only. " +
    `ISO 6789-1:2017 lets such a tool be off by ${limit} %, here ${shown((mean * limit) / 100)} lbf·ft either way, ` +
    `and the band is ${shown(band.high - band.low)} lbf·ft wide.`
  );
}

const sayChances = ({ conformity: { below, above } }: ReadingFacts): string =>
  `Chance of being under the band ${percent(below)}, over it ${percent(above)}.`;

const shown = (lbfFt: number): string => roundTo(lbfFt, 2).toFixed(2);
const percent = (probability: number): string => `${roundTo(probability * 100, 1)} %`;
