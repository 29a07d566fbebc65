import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import type { FilledFields } from "#shared/intake/form-fields.ts";
import { type Circumstances, QUESTIONS, type Question } from "#shared/intake/questions.ts";
import type { FieldProblem } from "#shared/intake/read-answer.ts";
import { INTRO, RESUME } from "#shared/messages/owner-words.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { QUESTION_WORDS } from "#shared/messages/question-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { PageFrame } from "#src/http/page-frame.tsx";
import { Dropped } from "#src/owner/dropped.tsx";
import { QuestionForm } from "#src/owner/question-form.tsx";
import { Tag } from "#src/owner/tag.tsx";

type ConversationPageProps = {
  readonly front: ShopSettings["front"];
  readonly draft: Draft;
  readonly now: Circumstances;
  readonly question: Question;
  readonly filled: FilledFields;
  readonly problem?: FieldProblem | null;
  readonly dropped?: readonly QuestionId[];
  /** Opens this conversation elsewhere; null before the first answer. */
  readonly resumeLink: string | null;
};

/** The tag, and beside it the question that is open. The script reads the answers off `main` to go on by itself. */
export function ConversationPage(props: ConversationPageProps) {
  const { front, draft, now, question, filled, problem = null, dropped = [], resumeLink } = props;
  return (
    <PageFrame title={QUESTION_WORDS[question.id].asks} front={front} kind="owner">
      <main id="main" class="beside" data-draft={JSON.stringify(draft)} data-now={JSON.stringify(now)}>
        <Tag draft={draft} />
        <div class="talk">
          {resumeLink === null && <p data-intro>{INTRO}</p>}
          <Dropped dropped={dropped} />
          <div id="question">
            <QuestionForm question={question} filled={filled} problem={problem} />
          </div>
          <ResumeOffer link={resumeLink} />
        </div>
      </main>
    </PageFrame>
  );
}

/** Hidden before the first answer, when there is nothing to go on with. */
const ResumeOffer = ({ link }: { readonly link: string | null }) => (
  <details data-resume hidden={link === null}>
    <summary>{RESUME.offer}</summary>
    <p>{RESUME.how}</p>
    <label class="field">
      <span>{PAGE_WORDS.resumeLink}</span>
      <input type="text" readonly value={link ?? ""} data-copy />
    </label>
  </details>
);

/** Every question's empty form, fetched once by the script so that it can go on without the network. */
export const AllQuestions = () => (
  <>
    {QUESTIONS.map((question) => (
      <template data-question={question.id}>
        <QuestionForm question={question} filled={{}} />
      </template>
    ))}
  </>
);
