/** From here on the series below, cut after its last term, is good to the last digit of a double. */
const SERIES_FROM = 12;

/** Coefficients B(2k) / (2k (2k-1)), k = 1 to 7. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360_360, 1 / 156];

/**
 * ln Γ(x) for x > 0: Stirling's series, NIST Digital Library of Mathematical Functions 5.11.1,
 * after stepping x up by the recurrence 5.5.1.
 * @example logGamma(5) // 3.178053830347946, ln 24
 */
export function logGamma(x: number): number {
  let shifted = x;
  let stepped = 1;
  while (shifted < SERIES_FROM) {
    stepped *= shifted;
    shifted += 1;
  }
  const series = STIRLING.reduce((sum, coefficient, k) => sum + coefficient / shifted ** (2 * k + 1), 0);
  return (shifted - 0.5) * Math.log(shifted) - shifted + 0.5 * Math.log(2 * Math.PI) + series - Math.log(stepped);
}
