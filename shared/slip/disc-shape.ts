/** One conical spring washer, all in mm. `reducedThicknessMm` only where it has contact flats (thicker than 6 mm). */
export type DiscSpring = {
  readonly outerMm: number;
  readonly innerMm: number;
  readonly thicknessMm: number;
  readonly freeHeightMm: number;
  readonly reducedThicknessMm?: number;
};

/** What the equations of a disc spring work on: thickness and height to flat in mm, and the factor K4. */
export type EffectiveDisc = { readonly thicknessMm: number; readonly heightMm: number; readonly k4: number };

/**
 * Thickness, height to flat and K4 of a disc: 1 for groups 1 and 2; for group 3, with contact flats and a reduced
 * thickness t', after DIN EN 16984:2017-02 (C1, C2, K4). K4 is such that at 3/4 of the way to flat the disc carries
 * what one of full thickness without flats would.
 * @example effectiveDisc({ outerMm: 125, innerMm: 64, thicknessMm: 8, freeHeightMm: 10.6, reducedThicknessMm: 7.5 }).k4 // 1.08342
 */
export function effectiveDisc({ thicknessMm, freeHeightMm, reducedThicknessMm }: DiscSpring): EffectiveDisc {
  if (reducedThicknessMm === undefined) return { thicknessMm, heightMm: freeHeightMm - thicknessMm, k4: 1 };
  const reduced = reducedThicknessMm / thicknessMm;
  const free = freeHeightMm / thicknessMm;
  const c1 = reduced ** 2 / ((free / 4 - reduced + 3 / 4) * ((5 * free) / 8 - reduced + 3 / 8));
  const c2 = (c1 / reduced ** 3) * ((5 / 32) * (free - 1) ** 2 + 1);
  return {
    thicknessMm: reducedThicknessMm,
    heightMm: freeHeightMm - reducedThicknessMm,
    k4: Math.sqrt(-c1 / 2 + Math.sqrt((c1 / 2) ** 2 + c2)),
  };
}
