/**
 * Rounds once, for a number that is about to be shown; convert units before, never after.
 * `toFixed` rounds the stored binary value exactly, which multiplying by a power of ten first would not.
 * @example roundTo(17.999999999999996 - 1.5, 2) // 16.5
 */
export function roundTo(value: number, decimals: number): number {
  const rounded = Number(value.toFixed(decimals));
  return rounded === 0 ? 0 : rounded; // never -0, which would be shown as "-0"
}
