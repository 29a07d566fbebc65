import { QUESTIONS } from "#shared/intake/questions.ts";
import type { Fields } from "#shared/intake/read-answer.ts";
import { QUESTION_WORDS } from "#shared/messages/question-words.ts";
import { CALLER, UNIT_HERE } from "#shared/messages/shop-caller-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { CallerProblem } from "#src/bench/caller/caller-answers.ts";
import { fieldName } from "#src/bench/caller/caller-fields.ts";
import { CallerQuestion } from "#src/bench/caller/caller-question.tsx";
import type { UnitHere } from "#src/bench/caller/unit-here.ts";
import { ProblemSummary } from "#src/bench/problem-summary.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type FormPageProps = {
  readonly front: ShopSettings["front"];
  readonly here: UnitHere;
  /** Where the form is sent, after `/shop/book`. */
  readonly path: string;
  readonly typed: Fields;
  readonly problems?: readonly CallerProblem[];
  readonly notice?: string;
};

/** All questions on one page, to be filled in while somebody talks. */
export const CallerFormPage = ({ front, here, path, typed, problems = [], notice }: FormPageProps) => (
  <ShopPage title={here.unitHere ? UNIT_HERE.title : CALLER.title} front={front}>
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
    <p>{here.unitHere ? UNIT_HERE.how : CALLER.how}</p>
    <form method="post" action={`/shop/book${path}${here.query}`} novalidate>
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
