import { combine } from "#shared/measurement/combined-uncertainty.ts";
import { repeated } from "#shared/measurement/repeatability.ts";
import { tQuantile } from "#shared/measurement/t-distribution.ts";
import { conformity, guardBand } from "#shared/slip/conformity.ts";
import { READING_RULES, type ReadingFacts, type ReadingLevels, type SlipDecision } from "#shared/slip/reading-rules.ts";
import { accuracyPart, resolutionPart, stepIsCoarse, toolLimit } from "#shared/slip/tool-uncertainty.ts";
import type { SlipReadingRequest, TorqueTool } from "#shared/slip/torque-tool.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** What the readings prove. Torques in lbf·ft, unrounded. */
export type SlipReading = {
  readonly mean: number;
  readonly standardUncertainty: number;
  /** `null` = infinite: the readings are all the same, so no part of the uncertainty rests on their spread. */
  readonly effectiveDof: number | null;
  /** Half-width of the interval at the level of confidence of the settings. */
  readonly expanded: number;
  readonly probabilityInBand: number;
  /** How far inside a limit the mean must lie to be accepted. */
  readonly guardBand: number;
  readonly decision: SlipDecision;
  /** The reasons for the decision, the warnings included. */
  readonly why: string;
  readonly warnings: readonly string[];
};

/**
 * Readings of the final slip -> decision: uncertainty after JCGM 100:2008, conformity after JCGM 106:2012.
 * @example slipReading({ target: 18, band: { low: 17.5, high: 18.1 }, readings: [17.8, 17.9, 17.8],
 *   tool: { kind: "electronic", accuracyPercent: 1, resolution: 0.05 } }, SLIP_DEFAULTS).decision // "accept"
 */
export function slipReading(request: SlipReadingRequest, levels: ReadingLevels): SlipReading {
  const { band, readings, tool, target } = request;
  const { mean, repeatability } = repeated(readings);
  const { standardUncertainty, dof } = combine([repeatability, accuracyPart(tool, mean), resolutionPart(tool)]);
  const facts: ReadingFacts = {
    tool,
    band,
    mean,
    conformity: conformity(mean, standardUncertainty, band),
    guardBand: guardBand(standardUncertainty, levels.riskAllowed),
    levels,
  };
  const { decision, says } = decidingRule(facts);
  const warnings = warningsAbout(tool, mean);
  return {
    mean,
    standardUncertainty,
    effectiveDof: Number.isFinite(dof) ? dof : null,
    expanded: tQuantile((1 + levels.coverage) / 2, dof) * standardUncertainty,
    probabilityInBand: facts.conformity.inBand,
    guardBand: facts.guardBand,
    decision,
    why: [sayMean(mean, target), says(facts), ...warnings].join(" "),
    warnings,
  };
}

function decidingRule(facts: ReadingFacts) {
  const rule = READING_RULES.find(({ when }) => when(facts));
  if (rule === undefined) throw new Error("No reading rule holds: the table has a gap");
  return rule;
}

function sayMean(mean: number, target: number): string {
  const away = roundTo(Math.abs(mean - target), 2);
  const side = mean < target ? "under" : "over";
  return `The mean is ${roundTo(mean, 2)} lbf·ft, ${away === 0 ? "on" : `${away} ${side}`} the target.`;
}

function warningsAbout(tool: TorqueTool, mean: number): readonly string[] {
  if (!stepIsCoarse(tool, mean)) return [];
  return [
    `The tool shows steps of ${tool.resolution} lbf·ft. That is more than a quarter of its own limit of error, ` +
      `${roundTo(toolLimit(tool, mean), 2)} lbf·ft, and coarser than ISO 6789-1:2017 allows an electronic display.`,
  ];
}
