/** One source of uncertainty: its standard uncertainty in the unit of the result, and how well that is known. */
export type UncertaintyPart = {
  readonly standardUncertainty: number;
  /** Degrees of freedom; `Infinity` where the limits are taken as known. */
  readonly dof: number;
};

/**
 * Combined standard uncertainty of independent parts: JCGM 100:2008, 5.1.2, equation (10);
 * effective degrees of freedom after Welch and Satterthwaite: the same, G.4.1, equation (G.2b).
 * The degrees of freedom are not cut down to a whole number. `Infinity` where no part has finite ones.
 * @example combine([{ standardUncertainty: 3, dof: 2 }, { standardUncertainty: 4, dof: Infinity }])
 *   // { standardUncertainty: 5, dof: 15.43… }
 */
export function combine(parts: readonly UncertaintyPart[]): UncertaintyPart {
  const combined = Math.hypot(...parts.map((part) => part.standardUncertainty));
  // Shares of the whole, so that no fourth power runs out of a double's range.
  const sum = parts.reduce((total, part) => total + (part.standardUncertainty / combined) ** 4 / part.dof, 0);
  return { standardUncertainty: combined, dof: 1 / sum };
}
