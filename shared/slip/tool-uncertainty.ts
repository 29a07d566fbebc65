import type { UncertaintyPart } from "#shared/measurement/combined-uncertainty.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";

/** What the tool's accuracy comes to at a reading, lbf·ft: a limit of error, or an expanded uncertainty where k is given. */
export const toolLimit = ({ accuracyPercent }: TorqueTool, reading: number): number =>
  (reading * accuracyPercent) / 100;

/**
 * The tool's own uncertainty at a reading. A certificate's U is divided by its k (JCGM 100:2008, 4.3.3);
 * a bare limit of error is rectangular, half-width over √3 (4.3.7).
 * @example accuracyPart({ kind: "electronic", accuracyPercent: 1, resolution: 0.1 }, 18) // 0.1039
 */
export function accuracyPart(tool: TorqueTool, reading: number): UncertaintyPart {
  return { standardUncertainty: toolLimit(tool, reading) / (tool.k ?? Math.sqrt(3)), dof: Number.POSITIVE_INFINITY };
}

/**
 * The step of the display, entering once: rectangular over its full width, step over √12 (JCGM 100:2008, F.2.2.1).
 * @example resolutionPart({ kind: "electronic", accuracyPercent: 1, resolution: 0.1 }) // 0.0289
 */
export function resolutionPart({ resolution }: TorqueTool): UncertaintyPart {
  return { standardUncertainty: resolution / Math.sqrt(12), dof: Number.POSITIVE_INFINITY };
}

/** ISO 6789-1:2017: an electronic display steps by at most a quarter of the tool's maximum permissible deviation. */
const MOST_STEP_OF_LIMIT = 1 / 4;

/** Is the step too coarse for the limit the tool claims? A certificate's U is no such limit, so it is not judged. */
export const stepIsCoarse = (tool: TorqueTool, reading: number): boolean =>
  tool.k === undefined && tool.resolution > MOST_STEP_OF_LIMIT * toolLimit(tool, reading);
