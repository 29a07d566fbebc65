import { unreachable } from "#shared/basics/unreachable.ts";
import type { FieldProblem } from "#shared/intake/read-answer.ts";

/** What to tell the owner about a field that could not be read. */
export function problemWords(problem: FieldProblem): string {
  switch (problem.problem) {
    case "choose-one":
      return "Pick an answer first. “Not sure” and “None of these” are answers too.";
    case "not-a-number":
      return "Write a number, such as 120.";
    case "out-of-range":
      return `Write a number from ${problem.least} to ${problem.most}.`;
    case "not-a-date":
      return "Write a date, such as 2026-05-31. Leave it empty if you are not sure.";
    case "in-the-future":
      return `That date is still to come. Write ${problem.today} or an earlier date.`;
    case "more-than-now":
      return `That is more than the ${problem.now} h you gave for now. Was the hour meter replaced? Then change the hours now to both meters together.`;
    default:
      return unreachable(problem);
  }
}
