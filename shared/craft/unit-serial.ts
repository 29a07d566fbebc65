/** Fewer symbols are no serial number but a word for having none. */
const FEWEST_SYMBOLS = 4;
/** More are no serial number either; one typed symbol may stand for many. */
const MOST_SYMBOLS = 80;

/**
 * A unit's serial number in the one form by which the same unit is known again, whoever typed it. Null where it can
 * name nothing: what is short, or has no digit ("none", "n/a"), would make one unit of many.
 * @example unitSerial(" sn-0042 ") // "SN0042"
 * @example unitSerial("not readable") // null
 */
export function unitSerial(typed: string | null): string | null {
  const symbols = (typed ?? "")
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, "");
  const isLikely = symbols.length >= FEWEST_SYMBOLS && symbols.length <= MOST_SYMBOLS;
  return isLikely && /\p{N}/u.test(symbols) ? symbols : null;
}
