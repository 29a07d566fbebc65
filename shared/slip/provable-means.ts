import { normalQuantile } from "#shared/measurement/normal-distribution.ts";
import type { Band } from "#shared/slip/conformity.ts";
import type { ReadingLevels } from "#shared/slip/reading-rules.ts";
import { accuracyPart, resolutionPart } from "#shared/slip/tool-uncertainty.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";

/**
 * The means that readings all alike would prove with this wrench, in the unit of the band; readings that scatter prove
 * less. Null where there are none: a band too narrow for the wrench, or a click wrench, which proves nothing.
 *
 * The guard band (JCGM 106:2012, clause 8) grows with the reading, as the wrench's accuracy is a share of it. So each
 * end m solves |m - limit| = z u(m), with u(m)² = (a m)² + s² (JCGM 100:2008, 5.1.2).
 * @example provableMeans({ low: 17.5, high: 18.1 }, { kind: "electronic", accuracyPercent: 1, resolution: 0.05 },
 *   { riskAllowed: 0.05, rejectFrom: 0.95, coverage: 0.95 }) // { low: 17.669…, high: 17.928… }
 */
export function provableMeans(
  band: Band,
  tool: TorqueTool,
  { riskAllowed }: Pick<ReadingLevels, "riskAllowed">,
): Band | null {
  if (tool.kind === "click") return null;
  const z = normalQuantile(1 - riskAllowed);
  const share = z * accuracyPart(tool, 1).standardUncertainty;
  const step = z * resolutionPart(tool).standardUncertainty;
  const low = inside(band.low, 1);
  const high = inside(band.high, -1);
  return low <= high ? { low, high } : null;

  function inside(limit: number, way: 1 | -1): number {
    const rest = 1 - share ** 2;
    return (limit + way * Math.sqrt((share * limit) ** 2 + rest * step ** 2)) / rest;
  }
}

/** Where to aim: the target, or what is nearest to it of what the wrench can prove. @example provableAim(18, { low: 17.67, high: 17.92 }) // 17.92 */
export const provableAim = (target: number, means: Band | null): number =>
  means === null ? target : Math.min(Math.max(target, means.low), means.high);

/** For showing: rounded towards the middle, so that what is said holds. @example provableHundredths({ low: 17.669, high: 17.928 }) // 17.67, 17.92 */
export const provableHundredths = ({ low, high }: Band): Band => ({
  low: Math.ceil(low * 100) / 100,
  high: Math.floor(high * 100) / 100,
});
