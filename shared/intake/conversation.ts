import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import { type Circumstances, QUESTIONS, type Question } from "#shared/intake/questions.ts";

/** The answers that still stand, those that went, and what to ask next (null = all is said). */
export type Step = {
  readonly draft: Draft;
  readonly dropped: readonly QuestionId[];
  readonly next: Question | null;
};

/**
 * The one stepping function: from the answers so far to the next question. Answers to questions that no longer
 * apply, or that no longer agree with an earlier answer, are dropped and named.
 */
export function step(draft: Draft, now: Circumstances): Step {
  const kept: { -readonly [Id in keyof Draft]: Draft[Id] } = {};
  const dropped: QuestionId[] = [];
  let next: Question | null = null;
  for (const question of QUESTIONS) {
    const answer = draft[question.id];
    const asked = question.applies(kept, now);
    if (answer === undefined) {
      if (asked) next ??= question;
    } else if (asked && !contradicts(answer, kept)) {
      Object.assign(kept, { [question.id]: answer });
    } else {
      dropped.push(question.id);
      if (asked) next ??= question;
    }
  }
  return { draft: kept, dropped, next };
}

/** Steps on from one more answer. Washers named anew are asked back anew, unless it was the second answer that is repeated. */
export function answered({ washersAgain, ...draft }: Draft, id: QuestionId, answer: unknown, now: Circumstances): Step {
  const isOutdated = washersAgain === undefined || (id === "washers" && answer !== washersAgain);
  return step({ ...draft, ...(isOutdated ? {} : { washersAgain }), [id]: answer }, now);
}

/** A service cannot lie at more engine hours than the engine has now. */
function contradicts(answer: NonNullable<Draft[QuestionId]> | null, kept: Draft): boolean {
  const isService = typeof answer === "object" && answer !== null && "when" in answer;
  return isService && answer.engineHours !== null && answer.engineHours > (kept.engineHours ?? Infinity);
}
