import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";

/** How many digits the currency's minor unit has. @example minorDigits("USD") // 2 */
export const minorDigits = (currency: string): number =>
  new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2;

/** A price as it is typed, exact to the minor unit. @example majorText(12_505, 2) // "125.05" */
export function majorText(minor: number, digits: number): string {
  const text = String(minor).padStart(digits + 1, "0");
  return digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

/**
 * A typed price in minor units, by its digits alone: no float ever holds it. Spaces are skipped; a point or a comma parts
 * the minor units, and more digits than the currency has are refused, so "1,250" is never taken for 1.25.
 * @example readMajor("125.5", 2) // { ok: true, value: 12550 }
 */
export function readMajor(text: string, digits: number): Outcome<number, "not-a-price"> {
  const [, whole, fraction = ""] = /^(\d{1,9})(?:[.,](\d+))?$/.exec(text.replace(/\s/g, "")) ?? [];
  if (whole === undefined || fraction.length > digits) return refuse("not-a-price");
  return accept(Number(whole + fraction.padEnd(digits, "0")));
}
