import type { AskStart } from "#shared/job/approval-wish.ts";
import { quoteText } from "#shared/messages/money-words.ts";
import { ASK_DONE, ASKING, type AskDone } from "#shared/messages/shop-approval-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { AskFields, type AskFieldsProps } from "#src/bench/approval/ask-fields.tsx";
import { AskedBefore, type TypedReply } from "#src/bench/approval/asked-before.tsx";
import { BackToJob } from "#src/bench/change-pages.tsx";
import { FactList } from "#src/bench/fact-list.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { FindingsView } from "#src/http/approval/findings-view.tsx";

type AskPageProps = Omit<AskFieldsProps, "start"> & {
  readonly front: ShopSettings["front"];
  readonly job: Job;
  readonly start: AskStart;
  /** Names the next word to the owner, so that it is kept once. */
  readonly wordKey: string;
  readonly done?: AskDone | undefined;
  /** What was refused, where no field is to blame. */
  readonly problem?: string | undefined;
  readonly reply?: TypedReply | undefined;
};

/** What the sheet says, what the owner is asked, and everything that was asked before. */
export function AskPage(props: AskPageProps) {
  const { front, job, start, wordKey, done, problem, reply } = props;
  const { locale } = front;
  const { work, quote } = workNow(job);
  const [newest] = start.approvals;
  return (
    <ShopPage title={ASKING.title(job.number)} front={front}>
      {done !== undefined && (
        <p class="notice" role="status">
          {ASK_DONE[done]}
        </p>
      )}
      {problem !== undefined && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {newest?.state === "open" && (
        <AskedBefore approvals={[newest]} job={job} locale={locale} wordKey={wordKey} reply={reply} />
      )}
      <FactList
        facts={[
          [ASKING.asAgreed, `${WORK_WORDS[work]}, ${quoteText(quote, locale)}`],
          [ASKING.needs, WORK_WORDS[start.findings.work]],
        ]}
      />
      {job.state === "on-bench" ? <AskFields {...props} /> : newest?.state !== "open" && <p>{ASKING.notNow}</p>}
      <FindingsView findings={start.findings} />
      <AskedBefore
        approvals={start.approvals.filter(({ state }) => state !== "open")}
        job={job}
        locale={locale}
        wordKey={wordKey}
        reply={reply}
      />
      <p class="actions">
        <BackToJob number={job.number} />
      </p>
    </ShopPage>
  );
}
