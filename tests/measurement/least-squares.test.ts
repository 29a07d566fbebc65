import * as fc from "fast-check";
import { Matrix, QrDecomposition } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { type Fit, leastSquares } from "#shared/measurement/least-squares.ts";
import { type CertifiedFit, LONGLEY, NOINT1, NOINT2, NORRIS, PONTIUS } from "#tests/measurement/certified-fits.ts";

const fitted = (columns: readonly (readonly number[])[], observed: readonly number[]): Fit => {
  const fit = leastSquares(columns, observed);
  if (!fit.ok) throw new Error(fit.refusal.reason);
  return fit.value;
};

/** How many digits agree, as NIST counts them: the log relative error. */
const digits = (one: number, certified: number): number => -Math.log10(Math.max(1e-16, Math.abs(one / certified - 1)));
const fewestDigits = (ours: readonly number[], certified: readonly number[]): number =>
  Math.min(...certified.map((value, index) => digits(ours[index]!, value)));

const rSquared = ({ columns, observed }: CertifiedFit, { coefficients }: Fit): number => {
  const hasIntercept = columns[0]!.every((value) => value === 1);
  const mean = hasIntercept ? observed.reduce((sum, y) => sum + y, 0) / observed.length : 0;
  const left = observed.map(
    (y, row) => y - columns.reduce((sum, column, k) => sum + column[row]! * coefficients[k]!, 0),
  );
  const squares = (values: readonly number[]) => values.reduce((sum, value) => sum + value ** 2, 0);
  return 1 - squares(left) / squares(observed.map((y) => y - mean));
};

describe("leastSquares", () => {
  it.each([
    ["Norris", NORRIS, 11],
    ["Pontius", PONTIUS, 11],
    ["Longley", LONGLEY, 10],
    ["NoInt1", NOINT1, 13],
    ["NoInt2", NOINT2, 13],
  ])("agrees with the values that NIST StRD certifies for %s", (_, set, least) => {
    const fit = fitted(set.columns, set.observed);
    expect(fewestDigits(fit.coefficients, set.coefficients)).toBeGreaterThan(least);
    expect(fewestDigits(fit.standardErrors, set.standardErrors)).toBeGreaterThan(least - 1);
    expect(digits(fit.residualSd, set.residualSd)).toBeGreaterThan(least - 1);
    expect(Math.abs(rSquared(set, fit) - set.rSquared)).toBeLessThan(1e-10);
  });

  it("finds the coefficients of Wampler1 (NIST StRD), all of them 1, and leaves nothing over", () => {
    const x = Array.from({ length: 21 }, (_, index) => index);
    const columns = [0, 1, 2, 3, 4, 5].map((power) => x.map((it) => it ** power));
    const observed = x.map((_, row) => columns.reduce((sum, column) => sum + column[row]!, 0));
    const fit = fitted(columns, observed);
    for (const coefficient of fit.coefficients) expect(Math.abs(coefficient - 1)).toBeLessThan(1e-7);
    expect(fit.residualSd / Math.max(...observed)).toBeLessThan(1e-14);
  });

  const number = fc.integer({ min: -10_000, max: 10_000 }).map((hundredths) => hundredths / 100);
  const problems = fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 2, max: 12 })).chain(([width, spare]) =>
    fc.record({
      columns: fc.array(fc.array(number, { minLength: width + spare, maxLength: width + spare }), {
        minLength: width,
        maxLength: width,
      }),
      observed: fc.array(number, { minLength: width + spare, maxLength: width + spare }),
    }),
  );

  it("agrees with an independent library", () => {
    fc.assert(
      fc.property(problems, ({ columns, observed }) => {
        const oracle = new QrDecomposition(new Matrix(columns.map((it) => [...it])).transpose());
        fc.pre(oracle.isFullRank());
        const triangle = oracle.upperTriangularMatrix.diagonal().map(Math.abs);
        fc.pre(Math.min(...triangle) > 1e-3 * Math.max(...triangle));
        const theirs = oracle.solve(Matrix.columnVector([...observed])).to1DArray();
        const { coefficients } = fitted(columns, observed);
        const size = Math.max(...theirs.map(Math.abs));
        for (const [index, value] of theirs.entries()) {
          expect(Math.abs(coefficients[index]! - value)).toBeLessThan(1e-9 * size + 1e-9);
        }
      }),
    );
  });

  it("leaves over nothing that any column could still explain", () => {
    fc.assert(
      fc.property(problems, ({ columns, observed }) => {
        const fit = leastSquares(columns, observed);
        fc.pre(fit.ok);
        const rest = observed.map(
          (y, row) => y - columns.reduce((sum, column, k) => sum + column[row]! * fit.value.coefficients[k]!, 0),
        );
        const largest = Math.max(...fit.value.coefficients.map(Math.abs), 1);
        for (const column of columns) {
          expect(Math.abs(rest.reduce((sum, value, row) => sum + value * column[row]!, 0))).toBeLessThan(
            1e-6 * largest,
          );
        }
      }),
    );
  });

  it("keeps its digits where a column lies along the first row", () => {
    expect(digits(fitted([[1, 1e-8, 0]], [1, 2, 3]).coefficients[0]!, 1.00000002)).toBeGreaterThan(12);
    expect(fitted([[1, 0, 0]], [5, 2, 3]).coefficients).toEqual([expect.closeTo(5, 14)]);
    expect(fitted([[-1, 0, 0]], [5, 2, 3]).coefficients).toEqual([expect.closeTo(-5, 14)]);
  });

  it("scales with the units of its columns", () => {
    const inThousands = fitted(
      [LONGLEY.columns[0]!, LONGLEY.columns[2]!.map((value) => value / 1000)],
      LONGLEY.observed,
    );
    const plain = fitted([LONGLEY.columns[0]!, LONGLEY.columns[2]!], LONGLEY.observed);
    expect(inThousands.coefficients[1]! / plain.coefficients[1]!).toBeCloseTo(1000, 7);
    expect(inThousands.standardErrors[1]! / plain.standardErrors[1]!).toBeCloseTo(1000, 7);
  });

  it.each([
    [
      [
        [1, 1, 1],
        [2, 2, 2],
      ],
      [1, 2, 3],
      "columns-depend",
    ],
    [
      [
        [1, 2, 3, 4],
        [0, 0, 0, 0],
      ],
      [1, 2, 3, 5],
      "columns-depend",
    ],
    [[[1, 2, 3]], [1], "too-few-rows"],
    [
      [
        [1, 2],
        [3, 5],
      ],
      [1, 2],
      "too-few-rows",
    ],
  ])("refuses %j: %s", (columns, observed, reason) => {
    expect(leastSquares(columns, observed)).toEqual({ ok: false, refusal: { reason } });
  });
});
