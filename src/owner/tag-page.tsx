import type { Offer } from "#shared/calendar/find-offers.ts";
import type { Approval } from "#shared/job/approval.ts";
import type { BenchFindings } from "#shared/job/bench-findings.ts";
import { quoteText } from "#shared/messages/money-words.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { TAG_WORDS as WORDS } from "#shared/messages/tag-words.ts";
import { dateText, timeText } from "#shared/messages/time-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import type { Job } from "#shared/shop/booking.ts";
import { IN_THE_SHOP } from "#shared/shop/job-state.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { PageFrame } from "#src/http/page-frame.tsx";
import { QrCode } from "#src/http/qr-code.tsx";
import { Cautions } from "#src/owner/cautions.tsx";
import { JobStanding } from "#src/owner/job-standing.tsx";
import { Offers } from "#src/owner/offers.tsx";

type TagPageProps = {
  readonly front: ShopSettings["front"];
  readonly job: Job;
  /** The page's own address: the owner's key to the job. */
  readonly link: string;
  /** What the QR code says: the job, and nothing personal. */
  readonly jobLink: string;
  /** Other bench time, while the booking may still be moved. */
  readonly offers: readonly Offer[];
  readonly mayChange: boolean;
  /** What the shop asked of the owner, newest first. */
  readonly approvals: readonly Approval[];
  /** What the bench found and is sure of, asked or not. */
  readonly findings: BenchFindings | null;
  readonly wish: string;
  readonly notice?: string | undefined;
};

/** The job tag as packing slip: print it, tie it to the unit, put it in the box. Once the unit is there: how it stands. */
export function TagPage(props: TagPageProps) {
  const { front, job, link, jobLink, offers, mayChange, approvals, findings, wish, notice } = props;
  const cancelled = job.state === "cancelled";
  const isToCome = cancelled || job.state === "booked";
  return (
    <PageFrame title={`${WORDS.title} ${job.number}`} front={front} kind="owner">
      <main id="main">
        {notice !== undefined && (
          <p class="notice screen" role="alert">
            {notice}
          </p>
        )}
        <JobStanding job={job} front={front} link={link} approvals={approvals} findings={findings} />
        <article class="tag">
          <div class="eyelet"></div>
          <h1 tabindex={-1}>
            {cancelled ? WORDS.cancelledTitle : WORDS.title} <span class="number">{job.number}</span>
          </h1>
          <div class="pair">
            <QrCode text={jobLink} label={WORDS.qr(job.number)} />
            <TagFacts job={job} locale={front.locale} />
          </div>
          {isToCome && <ShipTo front={front} number={job.number} />}
        </article>
        {!cancelled && <KeepIt link={link} />}
        <div class="sheet">
          {isToCome && <Packing />}
          <Cautions verdict={workNow(job).work} unitIsHere={!isToCome} />
        </div>
        {mayChange && (
          <ChangeIt
            link={link}
            offers={offers}
            locale={front.locale}
            wish={wish}
            until={untilText(job, front.locale)}
          />
        )}
        {!mayChange && job.state === "booked" && <p class="screen">{WORDS.tooLate(front.phone)}</p>}
        {IN_THE_SHOP.includes(job.state) && <p class="screen">{WORDS.unitHere(front.phone)}</p>}
      </main>
    </PageFrame>
  );
}

const ShipTo = ({ front, number }: Pick<TagPageProps, "front"> & Pick<Job, "number">) => (
  <div class="stub">
    <h2>{WORDS.sendTo}</h2>
    <address>
      {front.shipTo.lines.map((line) => (
        <>
          {line}
          <br />
        </>
      ))}
      {front.shipTo.region} {front.shipTo.postcode}, {front.shipTo.country}
    </address>
    <p>
      {PAGE_WORDS.job} <strong class="number">{number}</strong>
    </p>
  </div>
);

const Packing = () => (
  <>
    <h2>{WORDS.packTitle}</h2>
    <ol>
      {WORDS.pack.map((line) => (
        <li>{line}</li>
      ))}
    </ol>
    <h2>{WORDS.boxTitle}</h2>
    <ul>
      {WORDS.box.map((line) => (
        <li>{line}</li>
      ))}
    </ul>
    <p>
      <small>({WORDS.packSource})</small>
    </p>
  </>
);

const untilText = ({ booking }: Job, locale: string): string =>
  timeText(booking.changeableUntil, booking.time.zone, locale);

function TagFacts({ job, locale }: { readonly job: Job; readonly locale: string }) {
  const { time } = job.booking;
  const { work, quote } = workNow(job);
  const { target, targetSI } = job.plan.slip;
  return (
    <dl class="facts">
      <dt>{WORDS.work}</dt>
      <dd>{WORK_WORDS[work]}</dd>
      <dt>{PAGE_WORDS.benchTime}</dt>
      <dd>
        <time datetime={new Date(time.startsAt).toISOString()}>{timeText(time.startsAt, time.zone, locale)}</time>,{" "}
        {time.benchName}
      </dd>
      {job.state === "booked" && (
        <>
          <dt>{WORDS.postBy}</dt>
          <dd>{dateText(job.postBy, locale)}</dd>
        </>
      )}
      <dt>{WORDS.willSet}</dt>
      <dd>
        {target === null || targetSI === null
          ? WORDS.askedFirst
          : `${target.value} lbf·ft (${targetSI.value.toFixed(1)} N·m)`}
      </dd>
      <dt>{PAGE_WORDS.price}</dt>
      <dd>{quoteText(quote, locale)}</dd>
    </dl>
  );
}

const KeepIt = ({ link }: { readonly link: string }) => (
  <div class="sheet screen">
    <h2>{WORDS.keepTitle}</h2>
    <p>{WORDS.keep}</p>
    <label class="field">
      <span>{WORDS.yourLink}</span>
      <input type="text" readonly value={link} data-copy />
    </label>
    <p class="actions">
      <button type="button" data-print hidden>
        {WORDS.print}
      </button>
      <button type="button" class="quiet" data-copy-link={link} hidden>
        {WORDS.copy}
      </button>
      <a class="button quiet" href={`${link}/slot.ics`}>
        {WORDS.calendar}
      </a>
    </p>
  </div>
);

type ChangeItProps = {
  readonly link: string;
  readonly offers: readonly Offer[];
  readonly locale: string;
  readonly wish: string;
  readonly until: string;
};

const ChangeIt = ({ link, offers, locale, wish, until }: ChangeItProps) => (
  <div class="sheet screen">
    <h2>{WORDS.changeTitle}</h2>
    <p>{WORDS.changeUntil(until)}</p>
    <details>
      <summary>{WORDS.move}</summary>
      <Offers offers={offers} locale={locale} action={`${link}/move`} button={WORDS.moveHere} wish={wish} />
    </details>
    <details>
      <summary>{WORDS.cancel}</summary>
      <form method="post" action={`${link}/cancel`}>
        <p>{WORDS.cancelHow}</p>
        <button type="submit">{WORDS.cancelYes}</button>
      </form>
    </details>
  </div>
);
