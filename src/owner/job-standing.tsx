import type { Approval } from "#shared/job/approval.ts";
import type { BenchFindings } from "#shared/job/bench-findings.ts";
import { JOB_MOVE_NAMES } from "#shared/job/job-moves.ts";
import { ASKED_ON_TAG } from "#shared/messages/approval-words.ts";
import { STANDING, standingWords } from "#shared/messages/job-standing-words.ts";
import { quoteText } from "#shared/messages/money-words.ts";
import { RECORD } from "#shared/messages/record-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { EngineWarning } from "#src/owner/engine-warning.tsx";

type StandingProps = {
  readonly job: Job;
  readonly front: ShopSettings["front"];
  /** The job's own address. */
  readonly link: string;
  /** What the owner was asked, newest first. */
  readonly approvals: readonly Approval[];
  /** What the bench found and is sure of; null = nothing yet. */
  readonly findings: BenchFindings | null;
};

/** What is asked of the owner, and where the job stands; nothing before the unit is there. */
export function JobStanding({ job, front, link, approvals, findings }: StandingProps) {
  const standing = standingWords(job);
  if (standing === null) return null;
  const { zone } = job.booking.time;
  const since = job.history.findLast(({ what }) => CHANGES_STATE.has(what))?.at;
  const told = findings ?? approvals.find(({ state }) => state !== "withdrawn")?.told;
  const open = approvals.find(({ state }) => state === "open");
  return (
    <>
      {open !== undefined && <AskedOfYou approval={open} zone={zone} locale={front.locale} link={link} />}
      <div class="sheet standing">
        <h2>{STANDING.title}</h2>
        {told !== undefined && <EngineWarning findings={told} />}
        <p class="state">{standing.title}</p>
        <p>
          {standing.says} {since !== undefined && STANDING.since(timeText(since, zone, front.locale))}
        </p>
        {open === undefined && approvals.length > 0 && (
          <p>
            <a href={`${link}/approval`}>{ASKED_ON_TAG.past}</a>
          </p>
        )}
        {job.history.some(({ what }) => what === "record-made") && (
          <p>
            <a class="button" href={`${link}/record`}>
              {RECORD.title}
            </a>
          </p>
        )}
        <p>{STANDING.takeItUp(front.phone)}</p>
      </div>
    </>
  );
}

/** All else that happens to a job leaves it where it stands. */
const CHANGES_STATE: ReadonlySet<string> = new Set([...JOB_MOVE_NAMES, "undone"]);

type AskedProps = {
  readonly approval: Approval;
  readonly zone: string;
  readonly locale: string;
  readonly link: string;
};

const AskedOfYou = ({ approval: { offered, until }, zone, locale, link }: AskedProps) => (
  <section class="sheet asked-of-you" aria-labelledby="asked">
    <h2 id="asked">{ASKED_ON_TAG.title}</h2>
    <p>
      <strong>{ASKED_ON_TAG.says(WORK_WORDS[offered.work], quoteText(offered.quote, locale))}</strong>{" "}
      {ASKED_ON_TAG.until(timeText(until, zone, locale))}
    </p>
    <p>
      <a class="button" href={`${link}/approval`}>
        {ASKED_ON_TAG.link}
      </a>
    </p>
  </section>
);
