import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";

/** Crockford base 32: no I, L, O or U, so that a number read aloud or by hand is not mistaken. */
const SYMBOLS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/** The check symbol is the number modulo 37, the smallest prime above 32. */
const CHECK_MODULUS = 37;
const MOST_DIGITS = 8;

export type JobNumberRefusal = { readonly reason: "not-a-job-number" } | { readonly reason: "check-symbol-wrong" };

/**
 * A job's number as printed: digits in Crockford base 32, then a check symbol that catches every single wrong symbol
 * and every swap of two neighbours. An identifier, never a key to anything.
 * @example jobNumber(1234) // "16JD"
 */
export const jobNumber = (serial: number): string => `${digitsOf(serial)}${SYMBOLS[serial % CHECK_MODULUS]}`;

/** Serials whose check symbol would be punctuation are skipped. @example nextSerial(31) // 37 */
export function nextSerial(after: number): number {
  const next = after + 1;
  return next % CHECK_MODULUS < SYMBOLS.length ? next : nextSerial(next);
}

/**
 * Reads a typed or scanned number, forgiving case, hyphens, spaces, and O, I, L for 0, 1, 1. Answers it as printed.
 * @example readJobNumber("l6-jd") // { ok: true, value: "16JD" }
 */
export function readJobNumber(text: string): Outcome<string, JobNumberRefusal> {
  const plain = text.toUpperCase().replace(/[\s-]/g, "").replace(/O/g, "0").replace(/[IL]/g, "1");
  const digits = plain.slice(0, -1);
  const isWritten = digits.length > 0 && digits.length <= MOST_DIGITS && [...plain].every((it) => SYMBOLS.includes(it));
  if (!isWritten) return refuse({ reason: "not-a-job-number" });
  const serial = serialIn(digits);
  return jobNumber(serial).padStart(plain.length, "0") === plain
    ? accept(jobNumber(serial))
    : refuse({ reason: "check-symbol-wrong" });
}

/** The serial behind a number, or null unless it is written exactly as printed. @example serialOf("16JD") // 1234 */
export function serialOf(number: string): number | null {
  const read = readJobNumber(number);
  return read.ok && read.value === number ? serialIn(number.slice(0, -1)) : null;
}

const serialIn = (digits: string): number =>
  [...digits].reduce((sum, digit) => sum * SYMBOLS.length + SYMBOLS.indexOf(digit), 0);

function digitsOf(serial: number): string {
  const rest = Math.floor(serial / SYMBOLS.length);
  return `${rest > 0 ? digitsOf(rest) : ""}${SYMBOLS[serial % SYMBOLS.length]}`;
}
