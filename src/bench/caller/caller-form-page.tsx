import { QUESTIONS } from "#shared/intake/questions.ts";
import type { Fields } from "#shared/intake/read-answer.ts";
import { QUESTION_WORDS } from "#shared/messages/question-words.ts";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { CallerProblem } from "#src/bench/caller/caller-answers.ts";
import { fieldName } from "#src/bench/caller/caller-fields.ts";
import { CallerQuestion } from "#src/bench/caller/caller-question.tsx";
import { ProblemSummary } from "#src/bench/problem-summary.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type FormPageProps = {
  readonly front: ShopSettings["front"];
  readonly action: string;
  readonly typed: Fields;
  readonly problems?: readonly CallerProblem[];
  readonly notice?: string;
};

/** All questions on one page, to be filled in while somebody talks. */
export const CallerFormPage = ({ front, action, typed, problems = [], notice }: FormPageProps) => (
  <ShopPage title={CALLER.title} front={front}>
    {notice !== undefined && (
      <p class="problem" role="alert">
        {notice}
      </p>
    )}
    <ProblemSummary
      title={CALLER.mend}
      says={CALLER.kept}
      problems={problems.map(({ question: { id }, problem }) => ({
        field: fieldName(id, problem.field),
        label: QUESTION_WORDS[id].asks,
      }))}
    />
    <p>{CALLER.how}</p>
    <form method="post" action={action} novalidate>
      {QUESTIONS.filter(({ id }) => id !== ASKED_BACK || isRaised(typed, problems)).map((question) => (
        <CallerQuestion question={question} typed={typed} problems={problems} />
      ))}
      <p class="actions">
        <button type="submit">{CALLER.next}</button>
      </p>
    </form>
  </ShopPage>
);

/** Asked only where the answer before it raises it. */
const ASKED_BACK = "washersAgain";

const isRaised = (typed: Fields, problems: readonly CallerProblem[]): boolean =>
  problems.some(({ question }) => question.id === ASKED_BACK) || fieldName(ASKED_BACK, "choice") in typed;
