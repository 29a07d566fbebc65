import type { Answers } from "#shared/craft/vocabulary.ts";

/**
 * Could the friction washers be ceramic? Only the earliest shim-stack units left the factory with them, and a rebuild
 * puts metal ones in. Source: common practice, no published source; the year is a default of this project.
 */
export function ceramicIsPlausible(
  { unitFamily, builtYear, lastRebuild }: Pick<Answers, "unitFamily" | "builtYear" | "lastRebuild">,
  untilYear: number,
): boolean {
  const oldEnough = builtYear === null || builtYear <= untilYear;
  return unitFamily !== "set-nut" && oldEnough && lastRebuild.when !== "known";
}
