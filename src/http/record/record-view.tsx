import { recordCode } from "#shared/job/record-code.ts";
import type { Service } from "#shared/job/record-schema.ts";
import type { SealedService } from "#shared/job/record-standing.ts";
import { slipHistory } from "#shared/job/slip-history.ts";
import { OPTION_WORDS } from "#shared/messages/option-words.ts";
import { plainService } from "#shared/messages/record-plain.ts";
import { RECORD } from "#shared/messages/record-words.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { dateText } from "#shared/messages/time-words.ts";
import { VERDICT_SHORT } from "#shared/messages/verdict-words.ts";
import { QrCode } from "#src/http/qr-code.tsx";
import { MeasuredTable } from "#src/http/record/measured-table.tsx";
import { PartsFound } from "#src/http/record/parts-found.tsx";
import { SlipHistorySection } from "#src/http/record/slip-history-section.tsx";

type RecordViewProps = {
  readonly sealed: SealedService;
  /** The services of the unit, oldest first, this one last. */
  readonly services: readonly SealedService[];
  readonly locale: string;
  /** Where the public reaches the site. */
  readonly origin: string;
};

/** One service on one sheet of paper: plain words first, numbers after, sources at the end. */
export function RecordView({ sealed, services, locale, origin }: RecordViewProps) {
  const { record, hash } = sealed;
  const { service } = record;
  const code = recordCode(record.job, hash);
  return (
    <article class="sheet record">
      <h1 tabindex={-1}>
        {RECORD.title} <span class="number">{record.job}</span>
      </h1>
      {record.kind === "correction" && <p>{RECORD.corrected(record.why)}</p>}
      <div class="pair">
        <QrCode text={`${origin}/check/${code}`} label={RECORD.qr(code)} />
        <RecordFacts service={service} code={code} origin={origin} locale={locale} />
      </div>
      <InShort service={service} locale={locale} />
      <div class="record-columns">
        <SlipHistorySection
          history={slipHistory(services)}
          dueAtHours={service.next.slipCheckAtHours}
          hasSerial={service.unit.serial !== null}
          locale={locale}
        />
        <PartsFound service={service} />
        <MeasuredTable found={service.found} left={service.left} />
        <Steps steps={service.steps} />
      </div>
      <Sources service={service} />
      <p class="faint">{RECORD.unsigned}</p>
    </article>
  );
}

type FactsProps = {
  readonly service: Service;
  readonly code: string;
  readonly origin: string;
  readonly locale: string;
};

const RecordFacts = ({ service, code, origin, locale }: FactsProps) => (
  <dl class="facts">
    <dt>{RECORD.unit}</dt>
    <dd>{OPTION_WORDS.unitFamily[service.unit.family]}</dd>
    <dt>{RECORD.serial}</dt>
    <dd>{service.unit.serial ?? RECORD.noSerial}</dd>
    <dt>{RECORD.date}</dt>
    <dd>
      <time datetime={service.date}>{dateText(service.date, locale)}</time>
    </dd>
    <dt>{RECORD.hours}</dt>
    <dd>{service.engineHours === null ? RECORD.noHours : RECORD.hoursText(service.engineHours)}</dd>
    <dt>{RECORD.work}</dt>
    <dd>{VERDICT_SHORT[service.work]}</dd>
    <dt>{RECORD.worked}</dt>
    <dd>{service.worked.join(", ")}</dd>
    <dt>{RECORD.code}</dt>
    <dd>
      <a class="code" href={`/check/${code}`}>
        {code}
      </a>{" "}
      <small>{RECORD.codeHow(`${origin}/check`)}</small>
    </dd>
  </dl>
);

function InShort({ service, locale }: { readonly service: Service; readonly locale: string }) {
  const { found, done, left, next } = plainService(service, locale);
  return (
    <section>
      <h2>{RECORD.short}</h2>
      {[found, [...done, ...left], next].map((sentences) => (
        <p>{sentences.join(" ")}</p>
      ))}
      {service.found.findings !== null && service.found.findings.engineDebris !== "unlikely" && (
        <ul>
          {service.found.findings.nextSteps.map(({ text }) => (
            <li>{text}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Steps({ steps }: Pick<Service, "steps">) {
  const [skipped, noted] = [steps.filter(({ was }) => was === "skipped"), steps.filter(isNoted)];
  if (skipped.length + noted.length === 0) return null;
  return (
    <section>
      {skipped.length > 0 && <StepList title={RECORD.skipped} steps={skipped} />}
      {noted.length > 0 && <StepList title={RECORD.notes} steps={noted} />}
    </section>
  );
}

const isNoted = ({ was, note }: Service["steps"][number]): boolean => was === "done" && note !== null;

const StepList = ({ title, steps }: { readonly title: string } & Pick<Service, "steps">) => (
  <>
    <h2>{title}</h2>
    <ul>
      {steps.map(({ step, note }) => (
        <li>
          {STEP_WORDS[step].title}: {note}
        </li>
      ))}
    </ul>
  </>
);

const Sources = ({ service }: { readonly service: Service }) => (
  <section class="sources">
    <h2>{RECORD.sources}</h2>
    <ul>
      {[...(service.found.findings?.reasons ?? []), ...service.rules].map(({ text, source }) => (
        <li>
          {text} <small>{RECORD.source(source)}</small>
        </li>
      ))}
      <li>
        {RECORD.settings} {RECORD.version(service.settingsVersion)}.
      </li>
    </ul>
  </section>
);
