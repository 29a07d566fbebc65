import { useContext } from "hono/jsx";
import type { Photo } from "#shared/job/photo.ts";
import { PHOTO_PAGE } from "#shared/messages/photo-words.ts";
import { answerLines } from "#shared/messages/shop-answers.ts";
import { JOB, JOB_ACTIONS } from "#shared/messages/shop-job-words.ts";
import { SHOP_RECORD } from "#shared/messages/shop-record-words.ts";
import { slotText } from "#shared/messages/shop-times.ts";
import { dateText, timeText } from "#shared/messages/time-words.ts";
import { VERDICT_SHORT, WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import { BENCH_TO_COME, type JobState, OVER } from "#shared/shop/job-state.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { JobPartLine } from "#shared/shop/stock-wish.ts";
import { AskLink } from "#src/bench/approval/ask-link.tsx";
import { AtWork } from "#src/bench/at-work.tsx";
import { FactList } from "#src/bench/fact-list.tsx";
import { JobHistory } from "#src/bench/job-history.tsx";
import { JobJudgement } from "#src/bench/job-judgement.tsx";
import { JobMoves, type RefusedMove } from "#src/bench/job-moves.tsx";
import { JobOwner, JobReturn } from "#src/bench/job-people.tsx";
import { JobSlip } from "#src/bench/job-slip.tsx";
import { JobParts } from "#src/bench/parts/job-parts.tsx";
import { mayReach } from "#src/bench/permissions.ts";
import { PhotoList, photosPath } from "#src/bench/photos/photo-list.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type JobPageProps = {
  readonly job: Job;
  readonly parts: readonly JobPartLine[];
  readonly photos: readonly Photo[];
  /** Names a form anew, so that it counts once however often it is sent. */
  readonly newId: () => string;
  readonly front: ShopSettings["front"];
  /** Epoch milliseconds. */
  readonly now: number;
  /** What was just done, in words. */
  readonly done?: string | undefined;
  readonly refused?: RefusedMove | undefined;
};

/** All that the shop knows of a job, where it stands, and what can be done with it. */
export function JobPage({ job, parts, photos, newId, front, now, done, refused }: JobPageProps) {
  const { locale } = front;
  const { judgement } = job.plan;
  const { time } = job.booking;
  return (
    <ShopPage title={JOB.title(job.number)} front={front}>
      {done && (
        <p class="notice" role="status">
          {done}
        </p>
      )}
      <JobMoves job={job} locale={locale} now={now} refused={refused} />
      <AskLink job={job} />
      <FactList
        facts={[
          [JOB.work, WORK_WORDS[workNow(job).work]],
          [JOB.verdict, VERDICT_SHORT[judgement.verdict]],
          [JOB.slot, `${slotText(time, locale)} (${time.zone})`],
          [JOB.bench, time.benchName],
          [JOB.postBy, dateText(job.postBy, locale)],
          [JOB.bookedAt, timeText(job.bookedAt, time.zone, locale)],
          [JOB.settingsVersion, JOB.version(job.settingsVersion)],
        ]}
      />
      <JobOwner owner={job.owner} />
      <Actions job={job} />
      <JobJudgement answers={job.answers} judgement={judgement} />
      <JobSlip slip={job.plan.slip} />
      <JobParts job={job} lines={parts} newId={newId} />
      <h2>{PHOTO_PAGE.heading}</h2>
      <PhotoList number={job.number} photos={photos} zone={time.zone} locale={locale} />
      <p class="screen">
        <a class="button quiet" href={photosPath(job.number)}>
          {photos.length === 0 ? PHOTO_PAGE.add : PHOTO_PAGE.all}
        </a>
      </p>
      <h2>{JOB.answers}</h2>
      <FactList facts={answerLines(job.answers).map(({ label, said }) => [label, said])} />
      <JobReturn job={job} locale={locale} />
      <JobHistory job={job} locale={locale} />
    </ShopPage>
  );
}

/** What can be done with the booking, as far as the job's state and who looks allow it. */
function Actions({ job }: { readonly job: Job }) {
  const role = useContext(AtWork)?.role ?? "bench";
  const actions = (["move", "link", "cancel"] as const).filter(
    (action) => mayReach(role, `/shop/jobs/:number/${action}`) && isInPlace(action, job.state),
  );
  return (
    <p class="actions screen">
      {actions.map((action) => (
        <a class="button quiet" href={`/shop/jobs/${job.number}/${action}`}>
          {JOB_ACTIONS[action]}
        </a>
      ))}
      {job.history.some(({ what }) => what === "record-made") && (
        <a class="button quiet" href={`/shop/jobs/${job.number}/record`}>
          {SHOP_RECORD.link}
        </a>
      )}
    </p>
  );
}

function isInPlace(action: "move" | "link" | "cancel", state: JobState): boolean {
  if (action === "link") return !OVER.includes(state);
  return action === "move" ? BENCH_TO_COME.includes(state) : state === "booked";
}
