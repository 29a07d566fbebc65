import { type DiscSpring, effectiveDisc } from "#shared/slip/disc-shape.ts";

/** Spring steel as the tables of DIN EN 16983 take it: modulus in N/mm², Poisson's ratio. */
const MODULUS = 206_000;
const POISSON = 0.3;

/**
 * Load of one disc in N, without friction: DIN EN 16984:2017-02, load equation with K1 and K4 (Almen and Laszlo, 1936).
 * @param deflectionMm how far it is pressed, from 0 to flat (free height less thickness); past flat it is no spring
 * @example discForce({ outerMm: 25, innerMm: 12.2, thicknessMm: 1.5, freeHeightMm: 2.05 }, 0.4125) // 2926.0
 */
export const discForce = (disc: DiscSpring, deflectionMm: number): number => forceCurve(disc)(deflectionMm);

/**
 * The same as a function of the deflection, for where one disc is pressed to many places.
 * @example forceCurve({ outerMm: 25, innerMm: 12.2, thicknessMm: 1.5, freeHeightMm: 2.05 })(0.4125) // 2926.0
 */
export function forceCurve(disc: DiscSpring): (deflectionMm: number) => number {
  const { thicknessMm: t, heightMm, k4 } = effectiveDisc(disc);
  const h = heightMm / t;
  const scale = loadScale(disc) * t ** 4 * k4 ** 2;
  return (deflectionMm) => {
    const s = deflectionMm / t;
    return scale * s * (k4 ** 2 * (h - s) * (h - s / 2) + 1);
  };
}

/**
 * Rate of one disc in N/mm, the slope of its load: the same, rate equation. Falls all the way to flat.
 * @param deflectionMm as for the load
 * @example discRate({ outerMm: 25, innerMm: 12.2, thicknessMm: 1.5, freeHeightMm: 2.05 }, 0.4125) // 6568
 */
export function discRate(disc: DiscSpring, deflectionMm: number): number {
  const { thicknessMm: t, heightMm, k4 } = effectiveDisc(disc);
  const [h, s] = [heightMm / t, deflectionMm / t];
  return loadScale(disc) * t ** 3 * k4 ** 2 * (k4 ** 2 * (h ** 2 - 3 * h * s + 1.5 * s ** 2) + 1);
}

/**
 * Load in N that presses one disc flat: the load at a deflection of free height less thickness.
 * @example flatLoad({ outerMm: 25, innerMm: 12.2, thicknessMm: 1.5, freeHeightMm: 2.05 }) // 3821.1
 */
export const flatLoad = (disc: DiscSpring): number => discForce(disc, effectiveDisc(disc).heightMm);

/**
 * Stresses of one disc in N/mm², compression negative: the same, equations for OM and for the edges I to IV.
 * @param deflectionMm as for the load
 * @example discStresses({ outerMm: 25, innerMm: 12.2, thicknessMm: 1.5, freeHeightMm: 2.05 }, 0.4125).iii // 1090.5
 */
export function discStresses(disc: DiscSpring, deflectionMm: number) {
  const { thicknessMm: t, heightMm, k4 } = effectiveDisc(disc);
  const { delta, k2, k3 } = ratioFactors(disc);
  const arch = k4 * (heightMm - deflectionMm / 2) * (1 / t);
  const bend = loadScale(disc) * t * k4 * deflectionMm;
  return {
    om: (-bend * 3) / Math.PI,
    i: -bend * (k2 * arch + k3),
    ii: -bend * (k2 * arch - k3),
    iii: (-bend / delta) * ((k2 - 2 * k3) * arch - k3),
    iv: (-bend / delta) * ((k2 - 2 * k3) * arch + k3),
  };
}

/**
 * Deflection in mm from which the rate is less than a share of the first rate; `Infinity` where it never falls so low.
 * A share of 0 gives the top of the curve, which only a disc with height over thickness above √2 has before flat.
 * @param share of the first rate, 0 to 1
 * @example flatFrom({ outerMm: 25, innerMm: 12.2, thicknessMm: 0.5, freeHeightMm: 1.3 }, 0) // 0.5840
 */
export function flatFrom(disc: DiscSpring, share: number): number {
  const { thicknessMm: t, heightMm, k4 } = effectiveDisc(disc);
  const h = heightMm / t;
  const constant = h ** 2 + (1 - share * (k4 ** 2 * h ** 2 + 1)) / k4 ** 2;
  const underRoot = 9 * h ** 2 - 6 * constant;
  return underRoot < 0 ? Number.POSITIVE_INFINITY : (t * (3 * h - Math.sqrt(underRoot))) / 3;
}

/**
 * Factors of the diameter ratio delta: DIN EN 16984:2017-02, K1, K2 and K3.
 * @example ratioFactors({ outerMm: 2, innerMm: 1 }) // delta 2, k1 0.694333, k2 1.219777, k3 1.377672
 */
export function ratioFactors({ outerMm, innerMm }: Pick<DiscSpring, "outerMm" | "innerMm">) {
  const delta = outerMm / innerMm;
  const log = Math.log(delta);
  return {
    delta,
    k1: ((delta - 1) / delta) ** 2 / ((delta + 1) / (delta - 1) - 2 / log) / Math.PI,
    k2: ((6 / Math.PI) * ((delta - 1) / log - 1)) / log,
    k3: ((3 / Math.PI) * (delta - 1)) / log,
  };
}

/** 4E/(1 - µ²)/(K1 De²), N/mm⁴. */
const loadScale = (disc: DiscSpring): number =>
  (4 * MODULUS) / (1 - POISSON ** 2) / (ratioFactors(disc).k1 * disc.outerMm ** 2);
