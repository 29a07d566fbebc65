import type { Approval } from "#shared/job/approval.ts";
import {
  APPROVAL,
  APPROVAL_DONE,
  APPROVAL_ENDED,
  type ApprovalDone,
  WENT_AHEAD,
} from "#shared/messages/approval-words.ts";
import { moneyText, quoteText } from "#shared/messages/money-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import { NOT_INCLUDED, WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { FindingsView } from "#src/http/approval/findings-view.tsx";
import { Talk } from "#src/http/approval/talk.tsx";
import { PageFrame } from "#src/http/page-frame.tsx";
import { ApprovalChoices, WordForm } from "#src/owner/approval-choices.tsx";
import { Cautions } from "#src/owner/cautions.tsx";
import { EngineWarning } from "#src/owner/engine-warning.tsx";

type PageProps = {
  readonly front: ShopSettings["front"];
  readonly job: Job;
  /** Newest first. */
  readonly approvals: readonly Approval[];
  /** The address of the job's page. */
  readonly link: string;
  /** Names the next word, so that it is kept once. */
  readonly wordKey: string;
  readonly done?: ApprovalDone | undefined;
  readonly problem?: string;
  /** What was typed and not accepted. */
  readonly typed?: string;
};

/** What the shop asks, why, for how much and until when; and three ways to go on. */
export function ApprovalPage(props: PageProps) {
  const { front, approvals, link, done, problem } = props;
  const [newest] = approvals;
  const title = newest?.state === "open" ? APPROVAL.title : APPROVAL.closedTitle;
  return (
    <PageFrame title={title} front={front} kind="owner">
      <main id="main">
        {done !== undefined && (
          <p class="notice screen" role="status">
            {APPROVAL_DONE[done]}
          </p>
        )}
        {problem !== undefined && (
          <p class="problem sheet screen" role="alert">
            {problem}
          </p>
        )}
        <div class="sheet">
          <h1 tabindex={-1}>{title}</h1>
          {newest === undefined ? <p>{APPROVAL.none}</p> : <Question {...props} approval={newest} />}
        </div>
        <p class="actions">
          <button type="button" class="quiet" data-print hidden>
            {APPROVAL.print}
          </button>
          <a class="button quiet" href={link}>
            {APPROVAL.backToTag}
          </a>
        </p>
      </main>
    </PageFrame>
  );
}

type QuestionProps = PageProps & { readonly approval: Approval };

function Question(props: QuestionProps) {
  const { front, job, approval, link, wordKey, typed } = props;
  const { zone } = job.booking.time;
  const talk = (
    <Talk
      words={approval.words}
      title={APPROVAL.talk}
      nameOf={({ who }) => (who === "owner" ? APPROVAL.you : front.name)}
      zone={zone}
      locale={front.locale}
    />
  );
  return (
    <>
      {approval.state === "open" ? <p>{APPROVAL.lead(front.name)}</p> : <Ended {...props} />}
      <EngineWarning findings={approval.told} />
      <Asked {...props} />
      {approval.state === "open" ? (
        <ApprovalChoices
          job={job}
          approval={approval}
          link={link}
          locale={front.locale}
          wordKey={wordKey}
          typed={typed}
        />
      ) : (
        <WordForm approval={approval} link={link} wordKey={wordKey} typed={typed} />
      )}
      {talk}
      <FindingsView findings={approval.told} />
      <Cautions verdict={approval.told.verdict} unitIsHere />
    </>
  );
}

function Ended({ front, job, approval }: QuestionProps) {
  if (approval.state === "open") return null;
  const { locale } = front;
  const limit = moneyText(job.goAheadMinor ?? 0, approval.offered.quote.currency, locale);
  return (
    <p class="notice">
      {approval.closed?.by === "go-ahead" ? WENT_AHEAD(limit) : APPROVAL_ENDED[approval.state]}{" "}
      {approval.closed !== null && timeText(approval.closed.at, job.booking.time.zone, locale)}
    </p>
  );
}

function Asked({ front, job, approval, link }: QuestionProps) {
  const { locale } = front;
  const { offered, until, why, photo } = approval;
  const { zone } = job.booking.time;
  const before = workNow(job);
  return (
    <>
      <dl class="facts asked">
        <dt>{APPROVAL.what}</dt>
        <dd>{WORK_WORDS[offered.work]}</dd>
        <dt>{APPROVAL.price}</dt>
        <dd class="price">{quoteText(offered.quote, locale)}</dd>
        {approval.state === "open" && (
          <>
            <dt>{APPROVAL.instead}</dt>
            <dd>
              {WORK_WORDS[before.work]}, {quoteText(before.quote, locale)}
            </dd>
            <dt>{APPROVAL.answerBy}</dt>
            <dd>
              <time datetime={new Date(until).toISOString()}>{timeText(until, zone, locale)}</time>
            </dd>
          </>
        )}
      </dl>
      <p class="faint">{NOT_INCLUDED}</p>
      <h2>{APPROVAL.why}</h2>
      <p class="as-typed">{why}</p>
      {photo !== null && (
        <figure>
          <img class="photo" src={`${link}/photos/${photo}`} alt={APPROVAL.photo} />
        </figure>
      )}
    </>
  );
}
