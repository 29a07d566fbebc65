import { answerLines } from "#shared/messages/shop-answers.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import { RECEIVE } from "#shared/messages/shop-receive-words.ts";
import { slotText } from "#shared/messages/shop-times.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { FactList } from "#src/bench/fact-list.tsx";
import { MOST_NOTE_CHARACTERS } from "#src/bench/move-form.tsx";
import type { Punctuality } from "#src/bench/receive/punctuality.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

type ParcelProps = { readonly front: ShopSettings["front"]; readonly job: Job };

/** What is in the parcel by all that is known, and the one big button. */
export function ParcelPage({
  front,
  job,
  punctuality,
  note,
  problem,
}: ParcelProps & { readonly punctuality: Punctuality; readonly note: string; readonly problem?: string }) {
  const { work, parts } = workNow(job);
  return (
    <ShopPage title={RECEIVE.parcelTitle(job.number)} front={front}>
      {problem !== undefined && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      <p class="notice">{PUNCTUAL_WORDS[punctuality]}</p>
      <FactList
        facts={[
          [RECEIVE.owner, job.owner.name],
          [RECEIVE.work, WORK_WORDS[work]],
          [RECEIVE.booked, `${slotText(job.booking.time, front.locale)}, ${job.booking.time.benchName}`],
          [RECEIVE.serial, job.serial ?? JOB.noSerial],
        ]}
      />
      <form method="post" action={`/shop/receive/${job.number}`}>
        <div class="field">
          <label for="note">{RECEIVE.remark}</label>
          <textarea id="note" name="note" rows={2} maxlength={MOST_NOTE_CHARACTERS}>
            {note}
          </textarea>
        </div>
        <button type="submit" class="big">
          {RECEIVE.received}
        </button>
      </form>
      <h2>{RECEIVE.parts}</h2>
      {parts.length === 0 ? (
        <p>{RECEIVE.noParts}</p>
      ) : (
        <ul>
          {parts.map(({ name, count }) => (
            <li>
              {count} × {name}
            </li>
          ))}
        </ul>
      )}
      <h2>{RECEIVE.said}</h2>
      <FactList facts={answerLines(job.answers).map(({ label, said }) => [label, said])} />
    </ShopPage>
  );
}

const PUNCTUAL_WORDS: Readonly<Record<Punctuality, string>> = {
  late: RECEIVE.isLate,
  early: RECEIVE.isEarly,
  today: RECEIVE.isToday,
};

/** A unit came whose booking had been cancelled. */
export const CancelledParcelPage = ({ front, job }: ParcelProps) => (
  <ShopPage title={RECEIVE.cancelledTitle(job.number)} front={front}>
    <p>{RECEIVE.cancelled}</p>
    <p class="actions">
      <a class="button" href={`/shop/book?here&again=${job.number}`}>
        {RECEIVE.bookAgain}
      </a>
      <a class="button quiet" href={`/shop/jobs/${job.number}`}>
        {JOB.title(job.number)}
      </a>
    </p>
  </ShopPage>
);
