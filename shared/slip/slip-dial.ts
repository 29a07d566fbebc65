import type { Band } from "#shared/slip/conformity.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** What a dial shows, all in lbf·ft. */
export type DialFacts = {
  readonly target: number | null;
  readonly band: Band | null;
  readonly readings: readonly number[];
  /** Mean and expanded uncertainty; null while there are too few readings. */
  readonly result: { readonly mean: number; readonly expanded: number } | null;
};

/** One shape of the drawing, ready for SVG: the same on a page and in a script. */
export type DialShape = {
  readonly tag: "path" | "circle" | "text";
  /** What it stands for; the style sheet goes by it. */
  readonly part: "scale" | "tick" | "number" | "band" | "target" | "reading" | "spread" | "mean";
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly text?: string;
};

/** The drawing's own box, in its own units. */
export const DIAL_BOX = "0 0 320 208";

const CENTRE = { x: 160, y: 168 } as const;
const RADIUS = { scale: 128, band: 118, reading: 106, spread: 92, mean: 86, hub: 12, number: 146 } as const;
/** Half a turn, from left over the top to right. */
const SWEEP = Math.PI;
/** Room left beside the outermost thing shown, as a share of the span. */
const MARGIN = 0.15;
const LEAST_SPAN = 2;
const MOST_TICKS = 8;
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];

/** Where the dial begins and ends, and how far apart its ticks are, lbf·ft. */
export type DialScale = { readonly low: number; readonly high: number; readonly step: number };

/**
 * A scale that holds all that is shown, on whole ticks.
 * @example dialScale({ target: 18, band: { low: 17.5, high: 18.1 }, readings: [17.8], result: null })
 *   // { low: 16.5, high: 19, step: 0.5 }
 */
export function dialScale({ target, band, readings, result }: DialFacts): DialScale {
  const shown = [
    ...readings,
    ...(target === null ? [] : [target]),
    ...(band === null ? [] : [band.low, band.high]),
    ...(result === null ? [] : [result.mean - result.expanded, result.mean + result.expanded]),
  ];
  const [least, most] = shown.length === 0 ? [12, 14] : [Math.min(...shown), Math.max(...shown)];
  const margin = Math.max((most - least) * MARGIN, (LEAST_SPAN - (most - least)) / 2, 0);
  const [from, to] = [Math.max(0, least - margin), most + margin];
  const step = STEPS.find((each) => (to - from) / each <= MOST_TICKS) ?? Math.ceil((to - from) / MOST_TICKS);
  const whole = (value: number) => roundTo(value * step, 3);
  return { low: whole(Math.floor(roundTo(from / step, 6))), high: whole(Math.ceil(roundTo(to / step, 6))), step };
}

/** Angle of a value on the dial, radians from the left end; what lies off the scale is shown at its end. */
export function dialAngle({ low, high }: DialScale, value: number): number {
  return (Math.min(1, Math.max(0, (value - low) / (high - low))) || 0) * SWEEP;
}

/** The dial drawn to scale: ticks, band, target, each reading, the mean and what it may be off by. */
export function dialShapes(facts: DialFacts): readonly DialShape[] {
  const scale = dialScale(facts);
  const at = (value: number) => dialAngle(scale, value);
  const { target, band, readings, result } = facts;
  return [
    arc("scale", RADIUS.scale, 0, SWEEP),
    ...(band === null ? [] : [arc("band", RADIUS.band, at(band.low), at(band.high))]),
    ...ticksOf(scale).flatMap((value) => [
      ray("tick", at(value), RADIUS.scale - 8, RADIUS.scale + 6),
      numberAt(at(value), String(value)),
    ]),
    ...(result === null
      ? []
      : [
          arc("spread", RADIUS.spread, at(result.mean - result.expanded), at(result.mean + result.expanded)),
          ray("mean", at(result.mean), RADIUS.hub, RADIUS.mean),
        ]),
    ...readings.map((reading) => dot(at(reading))),
    ...(target === null ? [] : [ray("target", at(target), RADIUS.band - 14, RADIUS.scale + 6)]),
  ];
}

function ticksOf({ low, high, step }: DialScale): readonly number[] {
  return Array.from({ length: Math.round((high - low) / step) + 1 }, (_, place) => roundTo(low + place * step, 3));
}

function point(angle: number, radius: number) {
  return {
    x: roundTo(CENTRE.x - radius * Math.cos(angle), 2),
    y: roundTo(CENTRE.y - radius * Math.sin(angle), 2),
  };
}

/** Never more than half a turn, so the large-arc flag stays 0. */
function arc(part: DialShape["part"], radius: number, from: number, to: number): DialShape {
  const [start, end] = [point(from, radius), point(to, radius)];
  return { tag: "path", part, attributes: { d: `M${start.x} ${start.y}A${radius} ${radius} 0 0 1 ${end.x} ${end.y}` } };
}

function ray(part: DialShape["part"], angle: number, from: number, to: number): DialShape {
  const [start, end] = [point(angle, from), point(angle, to)];
  return { tag: "path", part, attributes: { d: `M${start.x} ${start.y}L${end.x} ${end.y}` } };
}

function dot(angle: number): DialShape {
  const { x, y } = point(angle, RADIUS.reading);
  return { tag: "circle", part: "reading", attributes: { cx: x, cy: y, r: 5 } };
}

function numberAt(angle: number, text: string): DialShape {
  const { x, y } = point(angle, RADIUS.number);
  return { tag: "text", part: "number", attributes: { x, y: y + 4, "text-anchor": "middle" }, text };
}
