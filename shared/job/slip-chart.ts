import type { SlipHistory, SlipPoint, UnitService } from "#shared/job/slip-history.ts";

/** A rectangle or a line in the drawing's own units, y downwards. */
export type ChartSpan = { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number };
export type ChartTick = { readonly at: number; readonly value: number };

/** One slip: where it is drawn, and how far its uncertainty reaches. */
export type ChartPoint = {
  readonly is: "found" | "left";
  readonly x: number;
  readonly y: number;
  readonly bar: { readonly top: number; readonly bottom: number } | null;
};

/** The slip of a unit over its engine hours, to scale. */
export type SlipChart = {
  readonly width: number;
  readonly height: number;
  readonly plot: ChartSpan;
  readonly hours: readonly ChartTick[];
  readonly slips: readonly ChartTick[];
  readonly points: readonly ChartPoint[];
  /** The bands that the slip was set for, each from its service to the next. */
  readonly bands: readonly ChartSpan[];
  /** From a slip as left to the one found at the next service. */
  readonly wear: readonly ChartSpan[];
  /** From the newest slip as left to the lower limit, as it has worn so far. */
  readonly forecast: ChartSpan | null;
  /** Where the next slip check is due. */
  readonly due: number | null;
};

/** Drawn about as large as it is shown on a phone, so that its letters are. */
const [WIDTH, HEIGHT] = [380, 250];
const PLOT: ChartSpan = { x1: 44, y1: 12, x2: 366, y2: 206 };
const TICKS = 5;
/** Found and left at one service lie at the same hours: each a little to its side, so that their bars are told apart. */
const ASIDE = 4;

type Placed = UnitService & { readonly engineHours: number };

/**
 * Lays the services out to scale. Null where no service has both hours and a slip: then the table alone tells.
 * @param dueAtHours engine hours of the next slip check
 */
export function slipChart({ services, trend }: SlipHistory, dueAtHours: number | null): SlipChart | null {
  const placed = services.filter((it): it is Placed => it.engineHours !== null && (it.found ?? it.left) !== null);
  const last = placed.at(-1);
  if (last === undefined) return null;
  const limitAt = trend?.hoursToLimit ? last.engineHours + trend.hoursToLimit.value : null;
  const end = dueAtHours ?? last.engineHours;
  const x = scale(rangeOf([...placed.map((it) => it.engineHours), end], 1), PLOT.x1, PLOT.x2);
  const y = scale(rangeOf(placed.flatMap(slipsOf), 0.5), PLOT.y2, PLOT.y1);
  const hoursAfter = (index: number) => placed[index + 1]?.engineHours ?? x.range.high;
  return {
    width: WIDTH,
    height: HEIGHT,
    plot: PLOT,
    hours: ticks(x),
    slips: ticks(y),
    points: placed.flatMap(({ engineHours, found, left }) => [
      ...pointAt("found", x.to(engineHours) - ASIDE, found, y),
      ...pointAt("left", x.to(engineHours) + ASIDE, left, y),
    ]),
    bands: placed.flatMap(({ engineHours, band }, index) =>
      band === null
        ? []
        : [{ x1: x.to(engineHours), y1: y.to(band.high), x2: x.to(hoursAfter(index)), y2: y.to(band.low) }],
    ),
    wear: placed.flatMap(({ engineHours, left }, index) => {
      const next = placed[index + 1];
      if (left === null || next?.found == null) return [];
      const [from, to] = [x.to(engineHours) + ASIDE, x.to(next.engineHours) - ASIDE];
      return [{ x1: from, y1: y.to(left.lbfFt), x2: to, y2: y.to(next.found.lbfFt) }];
    }),
    forecast: forecastOf(last, limitAt, x, y),
    due: dueAtHours !== null && dueAtHours > last.engineHours ? x.to(dueAtHours) : null,
  };
}

type Range = { readonly low: number; readonly high: number };
type Scale = { readonly range: Range; readonly to: (value: number) => number };

/** As far as the drawing goes: a forecast that reaches beyond is cut at its edge. */
function forecastOf({ engineHours, left, band }: Placed, limitAt: number | null, x: Scale, y: Scale): ChartSpan | null {
  if (left === null || band === null || limitAt === null || limitAt <= engineHours) return null;
  const until = Math.min(limitAt, x.range.high);
  const share = (until - engineHours) / (limitAt - engineHours);
  const slip = left.lbfFt + (band.low - left.lbfFt) * share;
  return { x1: x.to(engineHours) + ASIDE, y1: y.to(left.lbfFt), x2: x.to(until), y2: y.to(slip) };
}

function pointAt(is: ChartPoint["is"], x: number, slip: SlipPoint | null, y: Scale): readonly ChartPoint[] {
  if (slip === null) return [];
  const { lbfFt, expanded } = slip;
  const bar = expanded === null ? null : { top: y.to(lbfFt + expanded), bottom: y.to(lbfFt - expanded) };
  return [{ is, x, y: y.to(lbfFt), bar }];
}

const slipsOf = ({ found, left, band }: UnitService): readonly number[] =>
  [found, left]
    .flatMap((slip) => (slip === null ? [] : [slip.lbfFt - (slip.expanded ?? 0), slip.lbfFt + (slip.expanded ?? 0)]))
    .concat(band === null ? [] : [band.low, band.high]);

/** With a tenth to spare on either side, and at least some. Neither hours nor slips are ever below zero. */
function rangeOf(values: readonly number[], spare: number): Range {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const margin = Math.max(spare, (high - low) / 10);
  return { low: Math.max(0, low - margin), high: high + margin };
}

const scale = (range: Range, from: number, to: number): Scale => ({
  range,
  to: (value) =>
    from + ((Math.min(range.high, Math.max(range.low, value)) - range.low) / (range.high - range.low)) * (to - from),
});

/** At round numbers: steps of 1, 2 or 5 times a power of ten. */
function ticks({ range, to }: Scale): readonly ChartTick[] {
  const rough = (range.high - range.low) / TICKS;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((it) => it * power).find((it) => it >= rough) ?? rough;
  const first = Math.ceil(range.low / step);
  const count = Math.floor(range.high / step) - first + 1;
  return Array.from({ length: count }, (_, index) => {
    const value = Number(((first + index) * step).toPrecision(12));
    return { at: to(value), value };
  });
}
