import { DAY_GROUPS, type DayGroup, type DayJob, jobsOfGroup, onBenches } from "#shared/job/day-sheet.ts";
import { DAY, DAY_GROUP } from "#shared/messages/shop-day-words.ts";
import { SIGN_OUT } from "#shared/messages/shop-sign-in-words.ts";
import { slotLines, slotText } from "#shared/messages/shop-times.ts";
import { SHOP_JOB_STATE, SHOP_WORK } from "#shared/messages/shop-words.ts";
import { dateText, timeText } from "#shared/messages/time-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { NextStep } from "#src/bench/day/next-step.tsx";
import { FindJob } from "#src/bench/find-job.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type DayPageProps = {
  readonly front: ShopSettings["front"];
  readonly jobs: readonly DayJob[];
  /** The shop's calendar date. */
  readonly today: string;
  /** Epoch milliseconds. */
  readonly now: number;
  /** What was just done, in words. */
  readonly done?: string | undefined;
};

/** What is on the benches today and what waits for whom, each job with its one next step. */
export function DayPage({ front, jobs, today, now, done }: DayPageProps) {
  const { locale } = front;
  const groups = DAY_GROUPS.map((group) => ({ group, some: jobsOfGroup(jobs, group, now) }));
  return (
    <ShopPage title={`${DAY.title}, ${dateText(today, locale)}`} front={front}>
      {done !== undefined && (
        <p class="notice" role="status">
          {done}
        </p>
      )}
      <p class="actions screen">
        <a class="button" href="/shop/receive">
          {DAY.receive}
        </a>
      </p>
      <BenchesToday jobs={onBenches(jobs, today)} locale={locale} />
      {jobs.length === 0 && <p>{DAY.nothing}</p>}
      {groups
        .filter(({ some }) => some.length > 0)
        .map(({ group, some }) => (
          <section aria-labelledby={group}>
            <h2 id={group}>
              {DAY_GROUP[group]} ({some.length})
            </h2>
            <ul class="day">
              {some.map((job) => (
                <DayLine job={job} group={group} locale={locale} />
              ))}
            </ul>
          </section>
        ))}
      <FindJob />
      <form method="post" action="/shop/sign-out" class="screen">
        <p class="actions">
          <button type="submit" class="quiet">
            {SIGN_OUT.button}
          </button>
        </p>
      </form>
    </ShopPage>
  );
}

type BenchesProps = { readonly jobs: readonly DayJob[]; readonly locale: string };

function BenchesToday({ jobs, locale }: BenchesProps) {
  const benches = [...new Set(jobs.map(({ time }) => time.benchName))].toSorted();
  return (
    <section aria-labelledby="benches">
      <h2 id="benches">{DAY.benches}</h2>
      {jobs.length === 0 && <p>{DAY.noBenches}</p>}
      <div class="benches">
        {benches.map((bench) => (
          <div>
            <h3>{bench}</h3>
            <ol class="day-hours">
              {jobs
                .filter(({ time }) => time.benchName === bench)
                .map(({ number, time, work, ownerName, state }) => (
                  <li>
                    <span>{slotLines(time, locale).hours}</span>
                    <span>
                      <a href={`/shop/jobs/${number}`}>{number}</a> {SHOP_WORK[work]}, {ownerName}
                      <br />
                      <small>{SHOP_JOB_STATE[state]}</small>
                    </span>
                  </li>
                ))}
            </ol>
          </div>
        ))}
      </div>
    </section>
  );
}

type LineProps = { readonly job: DayJob; readonly group: DayGroup; readonly locale: string };

const DayLine = ({ job, group, locale }: LineProps) => (
  <li>
    <div>
      <a class="number" href={`/shop/jobs/${job.number}`} aria-label={DAY.openJob(job.number)}>
        {job.number}
      </a>
      <p>
        <strong>{SHOP_WORK[job.work]}</strong>, {job.ownerName}
        <br />
        <small>
          {whenText(job, group, locale)}
          {job.note !== null && `: ${job.note}`}
        </small>
        {job.ownerAsks && (
          <>
            <br />
            <a href={`/shop/jobs/${job.number}/approval`}>{DAY.ownerAsks}</a>
          </>
        )}
      </p>
    </div>
    <NextStep job={job} group={group} />
  </li>
);

/** What is to come is told by its bench time, what waits by how long it has waited. */
function whenText({ time, since, keepsTime }: DayJob, group: DayGroup, locale: string): string {
  const slot = keepsTime ? `${slotText(time, locale)}, ${time.benchName}` : DAY.noTime;
  if (group === "late" || group === "arriving" || group === "received") return slot;
  return DAY.since(timeText(since, time.zone, locale));
}
