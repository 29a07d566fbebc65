import * as z from "zod";
import { answerFields, DateText } from "#shared/craft/answers-schema.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";

const SERVICES = ["lastRebuild", "lastSlipSet"] as const;

/** Reports a field that is not accepted, and what would be. */
type Report = (path: readonly string[], accepted: string) => void;

/** Answers that are to be judged as on a day: nothing in them may lie after it. */
export const JudgedAnswers = z.strictObject({ onDate: DateText, ...answerFields }).superRefine((body, context) => {
  const report = reportTo(context);
  checkHours(body, report);
  checkDates(body, body.onDate, report);
});

/**
 * The same answers where they go with a wish for bench time. They are judged on the day the wish is made, so an
 * `onDate` that comes along with them is not used.
 */
export const WishAnswers = z
  .strictObject({ onDate: DateText.optional().describe("Not used here: today counts"), ...answerFields })
  .superRefine((body, context) => checkHours(body, reportTo(context)))
  .transform(({ onDate: _, ...answers }): Answers => answers);

const reportTo =
  (context: z.RefinementCtx): Report =>
  (path, message) =>
    context.addIssue({ code: "custom", path: [...path], message });

function checkHours(answers: Answers, report: Report) {
  for (const service of SERVICES) {
    const then = answers[service].engineHours;
    if (then === null || answers.engineHours === null || then <= answers.engineHours) continue;
    report([service, "engineHours"], `at most ${answers.engineHours}, the engine hours now`);
  }
}

function checkDates(answers: Answers, onDate: string, report: Report) {
  for (const service of SERVICES) {
    const { date } = answers[service];
    if (date !== null && date > onDate) report([service, "date"], `${onDate} (onDate) or earlier`);
  }
  // Next year's craft are sold from the summer on.
  const newest = Number(onDate.slice(0, 4)) + 1;
  if (answers.builtYear !== null && answers.builtYear > newest) report(["builtYear"], `${newest} or earlier`);
}
