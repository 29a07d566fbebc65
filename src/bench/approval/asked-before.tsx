import { type Approval, WORDS_MOST } from "#shared/job/approval.ts";
import { quoteText } from "#shared/messages/money-words.ts";
import { ASKED_STATE, ASKING, CLOSED_BY } from "#shared/messages/shop-approval-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import { FactList } from "#src/bench/fact-list.tsx";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { Talk } from "#src/http/approval/talk.tsx";

/** An answer to the owner that was not sent, and what it belongs to. */
export type TypedReply = { readonly approval: string; readonly text: string };

type BeforeProps = {
  readonly approvals: readonly Approval[];
  readonly job: Job;
  readonly locale: string;
  readonly wordKey: string;
  readonly reply: TypedReply | undefined;
};

/** What the owner was asked, how that stands, and what was said about it. */
export const AskedBefore = ({ approvals, ...rest }: BeforeProps) => (
  <>
    {approvals.map((approval) => (
      <AskedOnce approval={approval} {...rest} />
    ))}
  </>
);

type OnceProps = Omit<BeforeProps, "approvals"> & { readonly approval: Approval };

function AskedOnce({ approval, job, locale, wordKey, reply }: OnceProps) {
  const { id, state, askedAt, askedBy, offered, why, photo, until, closed, words } = approval;
  const { zone } = job.booking.time;
  return (
    <section class="offer" aria-labelledby={`asked.${id}`}>
      <h2 id={`asked.${id}`}>
        {ASKED_STATE[state]} {closed !== null && CLOSED_BY[closed.by]}
      </h2>
      {words.at(-1)?.who === "owner" && (
        <p class="notice">
          <strong>{ASKING.ownerAsks}</strong>
        </p>
      )}
      <FactList
        facts={[
          [ASKING.work, `${WORK_WORDS[offered.work]}, ${quoteText(offered.quote, locale)}`],
          [ASKING.why, <span class="as-typed">{why}</span>],
          [ASKING.until_, timeText(until, zone, locale)],
        ]}
      />
      {photo !== null && <img class="photo" src={`/shop/jobs/${job.number}/photos/${photo}`} alt={ASKING.photo} />}
      <p class="faint">{ASKING.askedBy(askedBy, timeText(askedAt, zone, locale))}</p>
      <Talk
        words={words}
        title={ASKING.talk}
        nameOf={({ staff }) => staff ?? ASKING.owner}
        zone={zone}
        locale={locale}
      />
      {(state === "open" || words.length > 0) && (
        <Reply number={job.number} id={id} wordKey={wordKey} typed={reply?.approval === id ? reply.text : ""} />
      )}
      {state === "open" && <Withdraw number={job.number} id={id} />}
    </section>
  );
}

type FormProps = { readonly number: string; readonly id: string };

const Reply = ({ number, id, wordKey, typed }: FormProps & { readonly wordKey: string; readonly typed: string }) => (
  <form method="post" action={`/shop/jobs/${number}/approval/reply`} class="screen">
    <input type="hidden" name="approval" value={id} />
    <input type="hidden" name="key" value={wordKey} />
    <LabelledField
      name={`reply.${id}`}
      label={ASKING.reply}
      control={({ id: field }) => (
        <textarea id={field} name="text" rows={3} maxlength={WORDS_MOST} required>
          {typed}
        </textarea>
      )}
    />
    <button type="submit" class="quiet">
      {ASKING.replyButton}
    </button>
  </form>
);

const Withdraw = ({ number, id }: FormProps) => (
  <details class="screen">
    <summary>{ASKING.withdraw}</summary>
    <form method="post" action={`/shop/jobs/${number}/approval/withdraw`}>
      <input type="hidden" name="approval" value={id} />
      <p>{ASKING.withdrawHow}</p>
      <button type="submit" class="quiet">
        {ASKING.withdraw}
      </button>
    </form>
  </details>
);
