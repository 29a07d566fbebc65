import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";

/** A least-squares fit: one figure for each column. */
export type Fit = {
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  /** Standard deviation of what the fit leaves over, with `dof` degrees of freedom. */
  readonly residualSd: number;
  readonly dof: number;
};

/** Columns that depend on one another have no fit of their own; nor have fewer rows than columns a spread. */
export type NoFit = { readonly reason: "too-few-rows" | "columns-depend" };

/** A column that keeps less than this share of its length beside the others is taken to depend on them. */
const DEPENDS_BELOW = 1e-13;

/**
 * Fits observed ≈ coefficients · columns by Householder reflections on columns of equal length: G. H. Golub and
 * C. F. Van Loan, Matrix Computations, 4th ed., 5.3.2 and 5.3.7 (from memory). Standard errors by
 * s²·diag((RᵀR)⁻¹). Units are the caller's: a coefficient is in those of `observed` over those of its column.
 * @param columns one array of numbers for each coefficient, a column of ones where there is an intercept
 * @example leastSquares([[4, 5, 6]], [3, 4, 4]) // coefficients [0.727273], standardErrors [0.042083], residualSd 0.369274, dof 2
 */
export function leastSquares(
  columns: readonly (readonly number[])[],
  observed: readonly number[],
): Outcome<Fit, NoFit> {
  const dof = observed.length - columns.length;
  if (dof < 1) return refuse({ reason: "too-few-rows" });
  const lengths = columns.map((column) => Math.hypot(...column));
  if (lengths.includes(0)) return refuse({ reason: "columns-depend" });
  const rest = columns.map((column, index) => column.map((value) => value / (lengths[index] ?? 1)));
  const right = [...observed];
  const upper: number[][] = [];
  for (const [step, column] of rest.entries()) {
    const mirror = reflector(column, step);
    if (mirror === null) return refuse({ reason: "columns-depend" });
    for (const other of rest.slice(step)) reflect(other, mirror, step);
    reflect(right, mirror, step);
    upper.push(rest.map((it) => it[step] ?? 0));
  }
  const residualSd = Math.hypot(...right.slice(columns.length)) / Math.sqrt(dof);
  const unscaled = (values: readonly number[]) => values.map((value, index) => value / (lengths[index] ?? 1));
  return accept({
    coefficients: unscaled(backSubstituted(upper, right)),
    standardErrors: unscaled(inverseRowLengths(upper).map((length) => length * residualSd)),
    residualSd,
    dof,
  });
}

/** The unit vector whose mirror leaves nothing of a column under its diagonal; null where too little is left of it. */
function reflector(column: readonly number[], step: number): readonly number[] | null {
  const tail = column.slice(step);
  const length = Math.hypot(...tail);
  if (length < DEPENDS_BELOW) return null;
  const first = tail[0] ?? 0;
  const vector = [first + (first < 0 ? -length : length), ...tail.slice(1)];
  const norm = Math.hypot(...vector);
  return vector.map((value) => value / norm);
}

function reflect(column: number[], mirror: readonly number[], step: number): void {
  const along = mirror.reduce((sum, value, index) => sum + value * (column[step + index] ?? 0), 0);
  for (const [index, value] of mirror.entries()) column[step + index] = (column[step + index] ?? 0) - 2 * along * value;
}

/** Solves upper · x = right from the last row up. */
function backSubstituted(upper: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const solved = upper.map(() => 0);
  for (let row = upper.length - 1; row >= 0; row -= 1) {
    const coefficients = upper[row] ?? [];
    const known = solved.reduce(
      (sum, value, column) => sum + (column > row ? (coefficients[column] ?? 0) * value : 0),
      0,
    );
    solved[row] = ((right[row] ?? 0) - known) / (coefficients[row] ?? 1);
  }
  return solved;
}

/** Lengths of the rows of the inverse of a triangle: the roots of diag((RᵀR)⁻¹). */
function inverseRowLengths(upper: readonly (readonly number[])[]): readonly number[] {
  const columns = upper.map((_, unit) =>
    backSubstituted(
      upper,
      upper.map((_row, index) => (index === unit ? 1 : 0)),
    ),
  );
  return upper.map((_, row) => Math.hypot(...columns.map((column) => column[row] ?? 0)));
}
