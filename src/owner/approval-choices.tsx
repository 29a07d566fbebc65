import { type Approval, WORDS_MOST } from "#shared/job/approval.ts";
import { APPROVAL } from "#shared/messages/approval-words.ts";
import { quoteText } from "#shared/messages/money-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";

type ChoicesProps = {
  readonly job: Job;
  readonly approval: Approval;
  /** The address of the job's page. */
  readonly link: string;
  readonly locale: string;
  readonly wordKey: string;
  readonly typed: string | undefined;
};

/** Yes, no, or a question first; each says what it leads to. */
export function ApprovalChoices({ job, approval, link, locale, wordKey, typed }: ChoicesProps) {
  const before = workNow(job);
  return (
    <section class="screen choices" aria-labelledby="choices">
      <h2 id="choices">{APPROVAL.choose}</h2>
      <form method="post" action={`${link}/approval`} class="offer">
        <input type="hidden" name="approval" value={approval.id} />
        <button type="submit" name="answer" value="approve">
          {APPROVAL.yes(quoteText(approval.offered.quote, locale))}
        </button>
        <p>{APPROVAL.yesHow}</p>
      </form>
      <form method="post" action={`${link}/approval`} class="offer">
        <input type="hidden" name="approval" value={approval.id} />
        <button type="submit" name="answer" value="decline" class="quiet">
          {APPROVAL.no}
        </button>
        <p>{APPROVAL.noHow(`${WORK_WORDS[before.work]}, ${quoteText(before.quote, locale)}`)}</p>
      </form>
      <details class="offer" open={typed !== undefined}>
        <summary class="button quiet">{APPROVAL.ask}</summary>
        <WordFields approval={approval} link={link} wordKey={wordKey} typed={typed} how={APPROVAL.askHow} />
      </details>
    </section>
  );
}

type WordProps = Pick<ChoicesProps, "approval" | "link" | "wordKey" | "typed">;

/** Once it is decided there is still something to say. */
export const WordForm = (props: WordProps) => (
  <details class="screen" open={props.typed !== undefined}>
    <summary>{APPROVAL.moreWords}</summary>
    <WordFields {...props} />
  </details>
);

const WordFields = ({ approval, link, wordKey, typed, how }: WordProps & { readonly how?: string }) => (
  <form method="post" action={`${link}/approval`}>
    <input type="hidden" name="approval" value={approval.id} />
    <input type="hidden" name="key" value={wordKey} />
    <div class="field">
      <label for="text">{APPROVAL.askLabel}</label>
      <textarea id="text" name="text" rows={4} maxlength={WORDS_MOST} required aria-describedby={how && "ask-how"}>
        {typed ?? ""}
      </textarea>
    </div>
    {how !== undefined && <p id="ask-how">{how}</p>}
    <button type="submit" class="quiet">
      {APPROVAL.askButton}
    </button>
  </form>
);
