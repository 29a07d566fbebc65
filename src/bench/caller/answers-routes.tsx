import { type Context, Hono } from "hono";
import type { Draft } from "#shared/intake/draft.ts";
import { QUESTIONS } from "#shared/intake/questions.ts";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import { circumstancesOf } from "#shared/shop/circumstances.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { CallEnv } from "#src/bench/caller/call-env.tsx";
import { readCallerAnswers } from "#src/bench/caller/caller-answers.ts";
import { filledFrom } from "#src/bench/caller/caller-fields.ts";
import { CallerFormPage } from "#src/bench/caller/caller-form-page.tsx";
import { answeredThen, cancelledJob, unitHereIn } from "#src/bench/caller/unit-here.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import { readFields } from "#src/http/read-form.ts";

/** Taking down a caller's answers, and changing them. */
export function answersRoutes(needs: BenchNeeds) {
  return new Hono<CallEnv>()
    .get("/", async (c) => {
      const { front } = (await needs.shop.settings()).settings;
      const here = unitHereIn(c);
      const typed = answeredThen(await cancelledJob(needs, here));
      return c.html(<CallerFormPage front={front} here={here} path="" typed={typed} />);
    })
    .post("/", (c) => takeDown(c, needs, { path: "", token: needs.newId() }))
    .get("/:call/answers", (c) => {
      const { token, settings, draft, here } = c.var.call;
      const page = { front: settings.front, here, path: answersOf(token), typed: filledFrom(draft) };
      return c.html(<CallerFormPage {...page} />);
    })
    .post("/:call/answers", (c) => {
      const { token } = c.var.call;
      return takeDown(c, needs, { path: answersOf(token), token });
    });
}

const answersOf = (token: string): string => `/${token}/answers`;

type Taking = { readonly path: string; readonly token: string };

async function takeDown(c: Context, needs: BenchNeeds, { path, token }: Taking) {
  const here = unitHereIn(c);
  const [typed, { settings }] = await Promise.all([readFields(c), needs.shop.settings()]);
  const page = { front: settings.front, here, path, typed };
  const read = readCallerAnswers(typed, circumstancesOf(settings, needs.now()));
  if (!read.ok) return c.html(<CallerFormPage {...page} problems={read.refusal} />, 422);
  const isKept = await keep(needs, token, read.value);
  if (!isKept) return c.html(<CallerFormPage {...page} notice={CALLER.tooMany} />, 503);
  return c.redirect(`/shop/book/${token}${here.query}`, 303);
}

/** One after the other, in the order of the questions: each is judged by the answers before it. */
async function keep({ shop }: BenchNeeds, token: string, draft: Draft): Promise<boolean> {
  const tokenHash = await sha256Hex(token);
  for (const { id } of QUESTIONS) {
    if (draft[id] === undefined) continue;
    const kept = await shop.keepAnswer({ tokenHash, question: id, answer: draft[id] });
    if (!kept.ok) return false;
  }
  return true;
}
