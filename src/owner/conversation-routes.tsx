import { type Context, Hono } from "hono";
import { step } from "#shared/intake/conversation.ts";
import type { QuestionId } from "#shared/intake/draft.ts";
import { fieldsFor } from "#shared/intake/form-fields.ts";
import { QUESTIONS, type Question, questionOf } from "#shared/intake/questions.ts";
import { type FieldProblem, type Fields, readAnswer } from "#shared/intake/read-answer.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { problemWords } from "#shared/messages/problem-words.ts";
import { clearCookie } from "#src/http/cookies.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import { readFields } from "#src/http/read-form.ts";
import { AllQuestions, ConversationPage } from "#src/owner/conversation-page.tsx";
import { droppedIn, droppedQuery } from "#src/owner/dropped.tsx";
import { keepToken, type Sitting, sittingOf } from "#src/owner/own-draft.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** The questions, one a page; without script plain forms, with it the same addresses. */
export function conversationRoutes(needs: OwnerNeeds) {
  return new Hono()
    .get("/", async (c) => {
      const sitting = await sittingOf(c, needs);
      return sitting.token === null ? c.html(page(c, needs, sitting, FIRST)) : c.redirect("/intake", 303);
    })
    .get("/intake", async (c) => {
      const { stored, now } = await sittingOf(c, needs);
      const { next } = step(stored.draft, now);
      return c.redirect(next === null ? "/verdict" : `/intake/${next.id}`, 303);
    })
    .get("/intake/questions", (c) => {
      c.header("cache-control", "private, max-age=3600");
      return c.html(<AllQuestions />);
    })
    .post("/intake/start-over", async (c) => {
      const { tokenHash } = await sittingOf(c, needs);
      if (tokenHash !== null) await needs.shop.forgetDraft(tokenHash);
      clearCookie(c, "draft", needs.origin(c.req.raw));
      return c.redirect("/", 303);
    })
    .get("/intake/:question", async (c) => {
      const question = questionOf(c.req.param("question"));
      if (question === undefined) return c.notFound();
      const sitting = await sittingOf(c, needs);
      const isAsked = question.applies(sitting.stored.draft, sitting.now);
      if (!isAsked) return c.redirect("/intake", 303);
      return c.html(page(c, needs, sitting, question, { dropped: droppedIn(c.req.query("dropped")) }));
    })
    .post("/intake/:question", async (c) => {
      const question = questionOf(c.req.param("question"));
      if (question === undefined) return c.notFound();
      const sitting = await sittingOf(c, needs);
      const fields = await readFields(c);
      const read = readAnswer(question, fields, sitting.stored.draft, sitting.now.onDate);
      if (!read.ok) return refusedAnswer(c, needs, sitting, question, { problem: read.refusal, filled: fields });
      const token = sitting.token ?? needs.newId();
      const wish = { tokenHash: await sha256Hex(token), question: question.id, answer: read.value };
      const kept = await needs.shop.keepAnswer(wish);
      if (!kept.ok) return c.text(PAGE_WORDS.tooManyDrafts, 429);
      keepToken(c, needs, token);
      if (wantsJson(c)) return c.json({ resume: resumeLink(c, needs, token) });
      const { next, dropped } = kept.value;
      return c.redirect(`${next === null ? "/verdict" : `/intake/${next}`}${droppedQuery(dropped)}`, 303);
    });
}

const FIRST = QUESTIONS[0] as Question;

type Shown = {
  readonly filled?: Fields;
  readonly problem?: FieldProblem;
  readonly dropped?: readonly QuestionId[];
};

function page(c: Context, needs: OwnerNeeds, sitting: Sitting, question: Question, shown: Shown = {}) {
  const { stored, token, settings, now } = sitting;
  const answer = stored.draft[question.id];
  return (
    <ConversationPage
      front={settings.front}
      draft={stored.draft}
      now={now}
      question={question}
      filled={shown.filled ?? (answer === undefined ? {} : fieldsFor(question, answer))}
      problem={shown.problem ?? null}
      dropped={shown.dropped ?? []}
      resumeLink={token === null ? null : resumeLink(c, needs, token)}
    />
  );
}

/** The same question again, with what was typed still in it. */
function refusedAnswer(
  c: Context,
  needs: OwnerNeeds,
  sitting: Sitting,
  question: Question,
  shown: Required<Pick<Shown, "problem" | "filled">>,
) {
  if (wantsJson(c)) return c.json({ field: shown.problem.field, accepted: problemWords(shown.problem) }, 422);
  return c.html(page(c, needs, sitting, question, shown), 422);
}

const resumeLink = (c: Context, needs: OwnerNeeds, token: string): string =>
  `${needs.origin(c.req.raw)}/resume/${token}`;

const wantsJson = (c: Context): boolean => c.req.header("accept") === "application/json";
