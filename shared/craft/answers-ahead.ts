import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";

/** When things were, as far as it is told; `null` = not told. */
export type TimesTold = Pick<Answers, "builtYear"> & {
  readonly [Service in "lastRebuild" | "lastSlipSet"]: Pick<RememberedService, "date">;
};

/** An answer that lies ahead of a day, and the latest that could be true on that day. */
export type AnswerAhead = {
  readonly field: "builtYear" | "lastRebuild.date" | "lastSlipSet.date";
  readonly latest: string;
};

/** What is told to have been, although its time is still to come. Next year's craft are sold from the summer on. */
export function answersAhead({ builtYear, lastRebuild, lastSlipSet }: TimesTold, onDate: string): AnswerAhead[] {
  const newest = Number(onDate.slice(0, 4)) + 1;
  const ahead: AnswerAhead[] = [];
  if ((builtYear ?? 0) > newest) ahead.push({ field: "builtYear", latest: String(newest) });
  if ((lastRebuild.date ?? "") > onDate) ahead.push({ field: "lastRebuild.date", latest: onDate });
  if ((lastSlipSet.date ?? "") > onDate) ahead.push({ field: "lastSlipSet.date", latest: onDate });
  return ahead;
}
