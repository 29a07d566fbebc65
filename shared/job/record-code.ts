import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";

/** Crockford base 32, as job numbers are written. */
const SYMBOLS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/** 80 bits of the hash: nobody finds another record with the same ones. */
const HASH_SYMBOLS = 16;
const BITS = 5;
const GROUP = 4;

/** What a record's code says. */
export type RecordCode = {
  readonly job: string;
  /** The first 80 bits of the record's hash, as 16 symbols. */
  readonly hashStart: string;
};

export type RecordCodeRefusal = { readonly reason: "not-a-code" } | { readonly reason: "check-symbol-wrong" };

/**
 * The code that a record shows: job number, 80 bits of its hash and a check symbol, in groups to be read aloud.
 * @param hash lower-case hex
 * @example recordCode("16JD", "ba7816bf8f01cfea414140de…") // "16JD-Q9W1-DFWF-077Y-MGA1-J"
 */
export const recordCode = (job: string, hash: string): string => codeText({ job, hashStart: hashStart(hash) });

/** A code as it is printed. */
export function codeText({ job, hashStart: start }: RecordCode): string {
  const groups = Array.from({ length: HASH_SYMBOLS / GROUP }, (_, at) => start.slice(at * GROUP, (at + 1) * GROUP));
  return [job, ...groups, checkSymbol(`${job}${start}`)].join("-");
}

/** The first 80 bits of a hash in hex, as 16 symbols. */
export function hashStart(hash: string): string {
  const bits = BigInt(`0x${hash.slice(0, (HASH_SYMBOLS * BITS) / 4)}`);
  return Array.from({ length: HASH_SYMBOLS }, (_, at) => {
    const symbol = (bits >> BigInt((HASH_SYMBOLS - 1 - at) * BITS)) & 31n;
    return SYMBOLS[Number(symbol)];
  }).join("");
}

/** Reads a typed or scanned code, forgiving case, hyphens, spaces, and O, I, L for 0, 1, 1. */
export function readRecordCode(text: string): Outcome<RecordCode, RecordCodeRefusal> {
  const plain = text.toUpperCase().replace(/[\s-]/g, "").replace(/O/g, "0").replace(/[IL]/g, "1");
  const [number, start] = [plain.slice(0, -HASH_SYMBOLS - 1), plain.slice(-HASH_SYMBOLS - 1, -1)];
  const isWritten = number.length > 1 && [...plain].every((it) => SYMBOLS.includes(it));
  if (!isWritten) return refuse({ reason: "not-a-code" });
  const job = readJobNumber(number);
  const isRight = job.ok && job.value === number && plain.at(-1) === checkSymbol(`${number}${start}`);
  return isRight ? accept({ job: number, hashStart: start }) : refuse({ reason: "check-symbol-wrong" });
}

/**
 * One symbol over the field of 32 elements (x^5 + x^2 + 1): each symbol counts with its own power of x, so that every
 * single wrong symbol, and every swap of two that differ, makes another check symbol: x has 31 different powers, and no
 * code is longer.
 */
function checkSymbol(symbols: string): string {
  const sum = [...symbols].reduce((total, symbol) => timesX(total ^ SYMBOLS.indexOf(symbol)), 0);
  return SYMBOLS[sum] ?? "";
}

const timesX = (element: number): number => ((element << 1) & 31) ^ (element & 16 ? 0b00101 : 0);
