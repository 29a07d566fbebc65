import { slipChart } from "#shared/job/slip-chart.ts";
import type { SlipHistory, SlipPoint, UnitService } from "#shared/job/slip-history.ts";
import { CHART_WORDS, trendText } from "#shared/messages/chart-words.ts";
import { dayText, RECORD } from "#shared/messages/record-words.ts";
import { VERDICT_SHORT } from "#shared/messages/verdict-words.ts";
import { roundTo } from "#shared/units/round-to.ts";
import { SlipChartDrawing } from "#src/http/record/slip-chart-drawing.tsx";

type HistoryProps = {
  readonly history: SlipHistory;
  readonly dueAtHours: number | null;
  readonly hasSerial: boolean;
  readonly locale: string;
};

/** The slip of the unit over its engine hours: as a drawing, as a sentence, and as a table of all its services. */
export function SlipHistorySection({ history, dueAtHours, hasSerial, locale }: HistoryProps) {
  const chart = slipChart(history, dueAtHours);
  const trend = trendText(history.trend);
  return (
    <section>
      <h2>{RECORD.history}</h2>
      {chart === null ? (
        <p>{RECORD.noChart}</p>
      ) : (
        <figure>
          <SlipChartDrawing chart={chart} says={CHART_WORDS.says(history.services.length)} />
          <figcaption>{CHART_WORDS.legend(chart)}</figcaption>
        </figure>
      )}
      {trend !== null && <p>{trend}</p>}
      <section class="scroll history" tabindex={0} aria-label={RECORD.historyTable}>
        <table>
          <caption class="hidden">{RECORD.historyTable}</caption>
          <thead>
            <tr>
              <th scope="col">{RECORD.date}</th>
              <th scope="col">{RECORD.hours}</th>
              <th scope="col">{CHART_WORDS.found}</th>
              <th scope="col">{CHART_WORDS.left}</th>
              <th scope="col">{RECORD.work}</th>
              <th scope="col">{RECORD.record}</th>
            </tr>
          </thead>
          <tbody>
            {history.services.map((service) => (
              <ServiceRow service={service} locale={locale} />
            ))}
          </tbody>
        </table>
      </section>
      {!hasSerial && <p class="faint">{RECORD.noSerialHistory}</p>}
    </section>
  );
}

const ServiceRow = ({ service, locale }: { readonly service: UnitService; readonly locale: string }) => (
  <tr>
    <th scope="row">{dayText(service.date, locale)}</th>
    <td>{service.engineHours ?? RECORD.nothing}</td>
    <td>{pointText(service.found)}</td>
    <td>{pointText(service.left)}</td>
    <td>{VERDICT_SHORT[service.work]}</td>
    <td>
      <a href={`/check/${service.code}`}>{service.job}</a>
    </td>
  </tr>
);

/** @example pointText({ lbfFt: 17.85, expanded: 0.12 }) // "17.85 ± 0.12" */
function pointText(slip: SlipPoint | null): string {
  if (slip === null) return RECORD.nothing;
  const mean = roundTo(slip.lbfFt, 2).toFixed(2);
  return slip.expanded === null ? mean : `${mean} ± ${roundTo(slip.expanded, 2).toFixed(2)}`;
}
