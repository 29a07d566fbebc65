import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Draft } from "#shared/intake/draft.ts";
import { type Circumstances, QUESTIONS, type Question } from "#shared/intake/questions.ts";
import { type FieldProblem, type Fields, readAnswer } from "#shared/intake/read-answer.ts";
import { fieldsOf } from "#src/bench/caller/caller-fields.ts";

/** A question whose answer could not be read, or that was not on the form because an answer on it raised it. */
export type CallerProblem = { readonly question: Question; readonly problem: FieldProblem };

/** Reads a form that holds all questions. Those that do not apply to the answers before them are passed over. */
export function readCallerAnswers(form: Fields, now: Circumstances): Outcome<Draft, readonly CallerProblem[]> {
  const problems: CallerProblem[] = [];
  let draft: Draft = {};
  for (const question of QUESTIONS) {
    if (!question.applies(draft, now)) continue;
    const answer = readAnswer(question, fieldsOf(question, form), draft, now.onDate);
    if (answer.ok) draft = { ...draft, [question.id]: answer.value };
    else problems.push({ question, problem: answer.refusal });
  }
  return problems.length === 0 ? accept(draft) : refuse(problems);
}
