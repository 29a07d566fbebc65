import { recordCode } from "#shared/job/record-code.ts";
import { recordThatCounts, type SealedRecord } from "#shared/job/record-standing.ts";
import type { RecordView as View } from "#shared/job/record-view.ts";
import { RECORD } from "#shared/messages/record-words.ts";
import { SHOP_RECORD as WORDS } from "#shared/messages/shop-record-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import {
  type CorrectionFields,
  type CorrectionProblems,
  correctionFields,
} from "#src/bench/record/correction-fields.ts";
import { CorrectionForm } from "#src/bench/record/correction-form.tsx";
import { ShopLinks } from "#src/bench/shop-links.tsx";
import { PageFrame } from "#src/http/page-frame.tsx";
import { RecordView } from "#src/http/record/record-view.tsx";

type RecordPageProps = {
  readonly job: Job;
  readonly front: ShopSettings["front"];
  readonly view: View;
  readonly origin: string;
  readonly mayCorrect: boolean;
  /** What was typed into the form, where it was not accepted. */
  readonly typed?: { readonly fields: CorrectionFields; readonly problems: CorrectionProblems };
  readonly notice?: string | undefined;
  readonly problem?: string | undefined;
};

/** The record as its owner sees it, every entry that was sealed, and the form to put it right. */
export function RecordPage({ job, front, view, origin, mayCorrect, typed, notice, problem }: RecordPageProps) {
  const sealed = recordThatCounts(view.entries);
  return (
    <PageFrame title={RECORD.titleOf(job.number)} front={front} kind="shop" links={<ShopLinks />}>
      <main id="main">
        {notice !== undefined && (
          <p class="notice screen" role="status">
            {notice}
          </p>
        )}
        {problem !== undefined && (
          <p class="problem screen" role="alert">
            {problem}
          </p>
        )}
        {sealed === null ? (
          <div class="sheet">
            <h1>{RECORD.titleOf(job.number)}</h1>
            <p>{view.entries.length === 0 ? RECORD.none : RECORD.takenBack}</p>
          </div>
        ) : (
          <RecordView sealed={sealed} services={view.services} locale={front.locale} origin={origin} />
        )}
        <div class="sheet screen">
          <p>
            <a href={`/shop/jobs/${job.number}`}>{WORDS.back(job.number)}</a>
          </p>
          {view.entries.length > 0 && <Entries job={job} entries={view.entries} locale={front.locale} />}
          {sealed !== null && !mayCorrect && <p>{WORDS.managersOnly}</p>}
          {sealed !== null && mayCorrect && (
            <CorrectionForm
              number={job.number}
              hash={sealed.hash}
              service={sealed.record.service}
              fields={typed?.fields ?? correctionFields(sealed.record.service)}
              problems={typed?.problems ?? {}}
            />
          )}
        </div>
      </main>
    </PageFrame>
  );
}

type EntriesProps = { readonly job: Job; readonly entries: readonly SealedRecord[]; readonly locale: string };

const Entries = ({ job, entries, locale }: EntriesProps) => (
  <>
    <h2 id="entries">{WORDS.entries}</h2>
    <section class="scroll" tabindex={0} aria-labelledby="entries">
      <table>
        <thead>
          <tr>
            <th scope="col">{WORDS.when}</th>
            <th scope="col">{WORDS.who}</th>
            <th scope="col">{WORDS.kind}</th>
            <th scope="col">{WORDS.why}</th>
            <th scope="col">{WORDS.code}</th>
          </tr>
        </thead>
        <tbody>
          {entries.map(({ record, hash }) => (
            <tr>
              <td>{timeText(Date.parse(record.at), job.booking.time.zone, locale)}</td>
              <td>{record.by ?? WORDS.shop}</td>
              <td>{WORDS.kinds[record.kind]}</td>
              <td>{record.kind === "service" ? "" : record.why}</td>
              <td class="code">{record.kind === "withdrawal" ? "" : recordCode(job.number, hash)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  </>
);
