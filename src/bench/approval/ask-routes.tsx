import { type Context, Hono } from "hono";
import { WORDS_MOST } from "#shared/job/approval.ts";
import type { AskRefusal } from "#shared/job/approval-wish.ts";
import {
  ASK_DONE,
  ASK_PROBLEMS,
  type AskDone,
  askRefusedText,
  closedText,
  replyRefusedText,
} from "#shared/messages/shop-approval-words.ts";
import { type AskProblems, askAtFirst, readAsk, type TypedAsk, typedAsk } from "#src/bench/approval/ask-form.ts";
import { AskPage } from "#src/bench/approval/ask-page.tsx";
import type { TypedReply } from "#src/bench/approval/asked-before.tsx";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { JobEnv } from "#src/bench/job-env.tsx";
import { readForm } from "#src/http/read-form.ts";

/** What the page says besides. */
type Said = {
  readonly done?: AskDone | undefined;
  readonly problem?: string;
  readonly problems?: AskProblems;
  readonly typed?: TypedAsk;
  /** The question's name, kept while its form is mended. */
  readonly wish?: string;
  readonly reply?: TypedReply;
};

/** Asking the owner for more work, answering questions about it, and taking it back. */
export function askRoutes(needs: BenchNeeds) {
  const PATH = "/:number/approval";
  return new Hono<JobEnv>()
    .get(PATH, (c) => show(c, { done: doneIn(c.req.query("done")) }))
    .post(PATH, async (c) => {
      const form = await readForm(c);
      const typed = typedAsk(form);
      const wish = form["wish"] ?? "";
      const read = readAsk(typed);
      if (!read.ok || wish === "") return mend(c, { typed, wish, problems: read.ok ? {} : read.refusal });
      const { staff, job } = c.var;
      const goAhead = form["how"] === "go-ahead";
      const asked = await needs.shop.askOwner({
        ...read.value,
        number: job.number,
        id: wish,
        staff: staff.name,
        anyPrice: staff.role === "manager",
        goAhead,
      });
      if (asked.ok) return sentOn(c, goAhead ? "went-ahead" : "asked");
      return refused(c, asked.refusal, { typed, wish });
    })
    .post(`${PATH}/reply`, async (c) => {
      const { approval = "", key = "", text: said = "" } = await readForm(c);
      const text = said.trim();
      const reply = { approval, text: said };
      if (text === "" || text.length > WORDS_MOST) return mend(c, { problem: ASK_PROBLEMS.reply(WORDS_MOST), reply });
      const { job, staff } = c.var;
      const sent = await needs.shop.replyToOwner({ number: job.number, approval, text, key, staff: staff.name });
      if (sent.ok) return sentOn(c, "replied");
      c.status(409);
      return show(c, { problem: replyRefusedText(sent.refusal), reply });
    })
    .post(`${PATH}/withdraw`, async (c) => {
      const { approval = "" } = await readForm(c);
      const { job, staff } = c.var;
      const back = await needs.shop.withdrawApproval({ number: job.number, approval, staff: staff.name });
      if (back.ok) return sentOn(c, "withdrawn");
      c.status(409);
      return show(c, { problem: closedText(back.refusal) });
    });

  function mend(c: Context<JobEnv>, said: Said) {
    c.status(422);
    return show(c, said);
  }

  function refused(c: Context<JobEnv>, refusal: AskRefusal, said: Said) {
    if (refusal.reason === "not-a-day") return mend(c, { ...said, problems: { until: ASK_PROBLEMS.until } });
    if (refusal.reason === "no-such-photo") return mend(c, { ...said, problems: { photo: ASK_PROBLEMS.photo } });
    c.status(409);
    return show(c, { ...said, problem: askRefusedText(refusal) });
  }

  async function show(c: Context<JobEnv>, { typed, wish, ...said }: Said) {
    const { number } = c.var.job;
    const [start, job] = await Promise.all([needs.shop.askStart(number), needs.shop.job(number)]);
    if (start === null || job === null) return c.notFound();
    return c.html(
      <AskPage
        front={c.var.front}
        job={job}
        start={start}
        typed={typed ?? askAtFirst(start)}
        wish={wish || needs.newId()}
        wordKey={needs.newId()}
        mayPrice={c.var.staff.role === "manager"}
        {...said}
      />,
    );
  }
}

const sentOn = (c: Context<JobEnv>, done: AskDone) =>
  c.redirect(`/shop/jobs/${c.var.job.number}/approval?done=${done}`, 303);

const doneIn = (what = ""): AskDone | undefined => (Object.hasOwn(ASK_DONE, what) ? (what as AskDone) : undefined);
