import { type DiscSpring, effectiveDisc } from "#shared/slip/disc-shape.ts";
import { discForce, discRate, flatFrom, forceCurve } from "#shared/slip/disc-spring.ts";

/** Like discs: some nested in one another (parallel), such packets facing each other (series). */
export type SpringStack = {
  readonly disc: DiscSpring;
  readonly nested: number;
  readonly packets: number;
  /** Share of the load lost to friction: for each layer between nested discs (wM), and at the edges (wR). */
  readonly layerFriction: number;
  readonly edgeFriction: number;
};

/**
 * Load in N of a stack pressed by so many mm, without friction: DIN EN 16984:2017-02, nested discs add their loads,
 * packets in series add their travel.
 * @example stackForce({ disc: B50, nested: 2, packets: 3, layerFriction: 0, edgeFriction: 0 }, 3.15) // 9524.2
 */
export const stackForce = ({ disc, nested, packets }: SpringStack, travelMm: number): number =>
  nested * discForce(disc, travelMm / packets);

/**
 * Load in N with friction: the same, F/(1 - wM(n - 1) - wR) while being pressed, F/(1 + wM(n - 1) + wR) while let go.
 * A stack that has been moved both ways lies between the two.
 * @example stackForceBounds({ disc: B50, nested: 2, packets: 1, layerFriction: 0.02, edgeFriction: 0.04 }, 1.05)
 *   // loading 10132, unloading 8985
 */
export function stackForceBounds(stack: SpringStack, travelMm: number) {
  const load = stackForce(stack, travelMm);
  const lost = frictionShare(stack);
  return { loading: load / (1 - lost), unloading: load / (1 + lost) };
}

/**
 * Load in N while being pressed, as a function of the travel in mm, for where one stack is pressed to many places.
 * @example loadingCurve({ disc: B50, nested: 2, packets: 1, layerFriction: 0.02, edgeFriction: 0.04 })(1.05) // 10132
 */
export function loadingCurve(stack: SpringStack): (travelMm: number) => number {
  const force = forceCurve(stack.disc);
  const factor = stack.nested / (1 - frictionShare(stack));
  return (travelMm) => factor * force(travelMm / stack.packets);
}

/** Share of the load that friction takes: the same, wM(n - 1) + wR. @example frictionShare(twoNested) // 0.06 */
export const frictionShare = ({ nested, layerFriction, edgeFriction }: SpringStack): number =>
  layerFriction * (nested - 1) + edgeFriction;

/**
 * Rate of a stack in N/mm, without friction: the slope of its load.
 * @example stackRate({ disc: B50, nested: 2, packets: 3, layerFriction: 0, edgeFriction: 0 }, 3.15) // 2249
 */
export const stackRate = ({ disc, nested, packets }: SpringStack, travelMm: number): number =>
  (nested * discRate(disc, travelMm / packets)) / packets;

/** Travel in mm from free to flat. @example stackTravel({ ...stack, packets: 3 }) // 4.2 */
export const stackTravel = ({ disc, packets }: SpringStack): number => packets * effectiveDisc(disc).heightMm;

/** Height in mm of the free stack. @example stackHeight({ ...stack, nested: 2, packets: 3 }) // 16.2 */
export const stackHeight = ({ disc, nested, packets }: SpringStack): number =>
  packets * (disc.freeHeightMm + (nested - 1) * disc.thicknessMm);

/** Travel in mm from which the rate is less than a share of the first; `Infinity` where it never is. */
export const stackFlatFrom = ({ disc, packets }: SpringStack, share: number): number => packets * flatFrom(disc, share);

/**
 * Share of the clamp load that is lost when the washers wear by so many mm, the nut staying where it is.
 * @example shareLostByWear({ disc: B50, nested: 1, packets: 1, layerFriction: 0, edgeFriction: 0 }, 1.05, 0.35) // 0.267
 */
export const shareLostByWear = (stack: SpringStack, travelMm: number, wearMm: number): number =>
  1 - stackForce(stack, Math.max(0, travelMm - wearMm)) / stackForce(stack, travelMm);
