import type { ChartPoint, SlipChart } from "#shared/job/slip-chart.ts";
import { RECORD } from "#shared/messages/record-words.ts";

const CAP = 4;
const DOT = 4.5;

/** The slip of a unit over its engine hours. The table below it says the same to those who do not see it. */
export function SlipChartDrawing({ chart, says }: { readonly chart: SlipChart; readonly says: string }) {
  const { width, height, plot } = chart;
  return (
    <svg class="slip-chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says}>
      {chart.bands.map(({ x1, y1, x2, y2 }) => (
        <rect class="band" x={x1} y={y1} width={x2 - x1} height={y2 - y1} />
      ))}
      {chart.slips.map(({ at, value }) => (
        <>
          <line class="grid" x1={plot.x1} y1={at} x2={plot.x2} y2={at} />
          <text x={plot.x1 - 6} y={at + 4} text-anchor="end">
            {value}
          </text>
        </>
      ))}
      {chart.hours.map(({ at, value }) => (
        <>
          <line class="axis" x1={at} y1={plot.y2} x2={at} y2={plot.y2 + 5} />
          <text x={at} y={plot.y2 + 18} text-anchor="middle">
            {value}
          </text>
        </>
      ))}
      <path class="axis" d={`M${plot.x1} ${plot.y1}V${plot.y2}H${plot.x2}`} />
      {chart.due !== null && <line class="due" x1={chart.due} y1={plot.y1} x2={chart.due} y2={plot.y2} />}
      {chart.wear.map((line) => (
        <line class="wear" {...line} />
      ))}
      {chart.forecast && <line class="forecast" {...chart.forecast} />}
      {chart.points.map((point) => (
        <Point point={point} />
      ))}
      <text x={plot.x1} y={height - 6} class="label">
        {RECORD.hoursAxis}
      </text>
    </svg>
  );
}

const Point = ({ point: { is, x, y, bar } }: { readonly point: ChartPoint }) => (
  <>
    {bar && (
      <path
        class="spread"
        d={`M${x} ${bar.top}V${bar.bottom}M${x - CAP} ${bar.top}h${2 * CAP}M${x - CAP} ${bar.bottom}h${2 * CAP}`}
      />
    )}
    <circle class={is} cx={x} cy={y} r={DOT} />
  </>
);
