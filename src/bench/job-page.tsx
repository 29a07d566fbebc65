import { answerLines } from "#shared/messages/shop-answers.ts";
import { eventText } from "#shared/messages/shop-event-words.ts";
import { JOB, JOB_ACTIONS, JOB_DONE, type JobDone, WHO } from "#shared/messages/shop-job-words.ts";
import { slotText } from "#shared/messages/shop-times.ts";
import { SHOP_JOB_STATE } from "#shared/messages/shop-words.ts";
import { dateText, timeText } from "#shared/messages/time-words.ts";
import { VERDICT_SHORT, WORK_WORDS } from "#shared/messages/verdict-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { FactList } from "#src/bench/fact-list.tsx";
import { JobJudgement } from "#src/bench/job-judgement.tsx";
import { JobOwner, JobReturn } from "#src/bench/job-people.tsx";
import { JobSlip } from "#src/bench/job-slip.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type JobPageProps = { readonly job: Job; readonly front: ShopSettings["front"]; readonly done?: JobDone | undefined };

/** All that the bench knows of a job before the unit is on it. */
export function JobPage({ job, front, done }: JobPageProps) {
  const { locale } = front;
  const { judgement, quote } = job.plan;
  const { time } = job.booking;
  return (
    <ShopPage title={JOB.title(job.number)} front={front}>
      {done && (
        <p class="notice" role="status">
          {JOB_DONE[done]}
        </p>
      )}
      <FactList
        facts={[
          [JOB.work, WORK_WORDS[quote.work]],
          [JOB.state, SHOP_JOB_STATE[job.state]],
          [JOB.verdict, VERDICT_SHORT[judgement.verdict]],
          [JOB.slot, `${slotText(time, locale)} (${time.zone})`],
          [JOB.bench, time.benchName],
          [JOB.postBy, dateText(job.postBy, locale)],
          [JOB.bookedAt, timeText(job.bookedAt, time.zone, locale)],
          [JOB.settingsVersion, JOB.version(job.settingsVersion)],
        ]}
      />
      <JobOwner owner={job.owner} />
      {job.state === "booked" && <Actions number={job.number} />}
      <JobJudgement answers={job.answers} judgement={judgement} />
      <JobSlip slip={job.plan.slip} parts={job.plan.parts} />
      <h2>{JOB.answers}</h2>
      <FactList facts={answerLines(job.answers).map(({ label, said }) => [label, said])} />
      <JobReturn job={job} locale={locale} />
      <History job={job} locale={locale} />
    </ShopPage>
  );
}

const Actions = ({ number }: { readonly number: string }) => (
  <p class="actions screen">
    {(["move", "link", "cancel"] as const).map((action) => (
      <a class="button quiet" href={`/shop/jobs/${number}/${action}`}>
        {JOB_ACTIONS[action]}
      </a>
    ))}
  </p>
);

const History = ({ job, locale }: { readonly job: Job; readonly locale: string }) => (
  <>
    <h2>{JOB.history}</h2>
    <table>
      <thead>
        <tr>
          <th scope="col">{JOB.when}</th>
          <th scope="col">{JOB.who}</th>
          <th scope="col">{JOB.what}</th>
        </tr>
      </thead>
      <tbody>
        {job.history.map(({ at, who, what }) => (
          <tr>
            <td>{timeText(at, job.booking.time.zone, locale)}</td>
            <td>{WHO[who]}</td>
            <td>{eventText(what)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </>
);
