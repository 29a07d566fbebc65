import { type Context, Hono } from "hono";
import { type Approval, WORDS_MOST } from "#shared/job/approval.ts";
import { ANSWERS } from "#shared/job/approval-wish.ts";
import {
  APPROVAL,
  APPROVAL_DONE,
  type ApprovalDone,
  tooLateWords,
  wordRefusedText,
} from "#shared/messages/approval-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import { readForm } from "#src/http/read-form.ts";
import { ApprovalPage } from "#src/owner/approval-page.tsx";
import { linkHashOf, ownedJob, tokenOf } from "#src/owner/owned-job.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** What the page says besides: what was done, what was refused, and what was typed with it. */
type Said = { readonly done?: ApprovalDone | undefined; readonly problem?: string; readonly typed?: string };

/** Where an owner decides about more work, by the job's own link. Reading it changes nothing: links get previewed. */
export function approvalRoutes(needs: OwnerNeeds) {
  const PATH = "/tag/:token/approval";
  return new Hono()
    .get(PATH, async (c) => {
      const job = await ownedJob(c, needs);
      return job === null ? c.notFound() : show(c, job, { done: doneIn(c.req.query("done")) });
    })
    .post(PATH, async (c) => {
      const job = await ownedJob(c, needs);
      if (job === null) return c.notFound();
      const { approval = "", answer: said, text = "", key = "" } = await readForm(c);
      const answer = ANSWERS.find((known) => known === said);
      return answer === undefined
        ? ask(c, job, { approval, text: text.trim(), key })
        : decide(c, job, { approval, answer });
    });

  async function decide(c: Context, job: Job, given: { approval: string; answer: (typeof ANSWERS)[number] }) {
    const answered = await needs.shop.answerApproval({ linkHash: await linkHashOf(c), ...given });
    if (answered.ok) return sentOn(c, given.answer === "approve" ? "approved" : "declined");
    if (answered.refusal.reason === "no-such-approval") return c.notFound();
    const { front } = (await needs.shop.settings()).settings;
    c.status(409);
    return show(c, job, { problem: tooLateWords(answered.refusal, front.phone) });
  }

  async function ask(c: Context, job: Job, word: { approval: string; text: string; key: string }) {
    if (word.text === "" || word.text.length > WORDS_MOST) {
      c.status(422);
      const problem = word.text === "" ? APPROVAL.empty : APPROVAL.tooLong(WORDS_MOST);
      return show(c, job, { problem, typed: word.text });
    }
    const kept = await needs.shop.askShop({ linkHash: await linkHashOf(c), ...word });
    if (kept.ok) return sentOn(c, "asked");
    if (kept.refusal.reason === "no-such-approval") return c.notFound();
    const { front } = (await needs.shop.settings()).settings;
    c.status(409);
    return show(c, job, { problem: wordRefusedText(kept.refusal, front.phone), typed: word.text });
  }

  async function show(c: Context, job: Job, said: Said) {
    const [{ settings }, approvals] = await Promise.all([
      needs.shop.settings(),
      needs.shop.approvalsByLink(await linkHashOf(c)),
    ]);
    return c.html(
      <ApprovalPage
        front={settings.front}
        job={job}
        approvals={approvals}
        link={`/tag/${tokenOf(c)}`}
        wordKey={needs.newId()}
        {...said}
      />,
    );
  }
}

const sentOn = (c: Context, done: ApprovalDone) => c.redirect(`/tag/${tokenOf(c)}/approval?done=${done}`, 303);

const doneIn = (what = ""): ApprovalDone | undefined =>
  Object.hasOwn(APPROVAL_DONE, what) ? (what as ApprovalDone) : undefined;

/** The question that waits for an answer, if one does. */
export const openQuestion = (approvals: readonly Approval[]): Approval | null =>
  approvals.find(({ state }) => state === "open") ?? null;
