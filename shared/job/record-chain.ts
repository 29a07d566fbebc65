import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";

/** A link of the chain as it is stored. */
export type ChainEntry = {
  /** Place in the chain, counted from 1 without gaps. */
  readonly step: number;
  /** Hash of the entry before; {@link GENESIS} for the first. */
  readonly before: string;
  /** The record's own text, canonical JSON. */
  readonly body: string;
  readonly hash: string;
};

/** How far a chain is known to be whole. */
export type ChainMark = { readonly step: number; readonly hash: string };

/** What stands before the first entry. */
export const GENESIS = "0".repeat(64);

/** The mark from which a whole chain is checked. */
export const CHAIN_START: ChainMark = { step: 0, hash: GENESIS };

/**
 * SHA-256 (FIPS 180-4) of the previous hash as lower-case hex, a line feed, and the body as UTF-8; lower-case hex.
 * Anybody can work it out again with common tools.
 * @example chainHash(GENESIS, "{}") // "5649d09e…"
 */
export const chainHash = (before: string, body: string): string =>
  bytesToHex(sha256(utf8ToBytes(`${before}\n${body}`)));

/** The entry that follows a mark. */
export function nextEntry({ step, hash }: ChainMark, body: string): ChainEntry {
  return { step: step + 1, before: hash, body, hash: chainHash(hash, body) };
}

/** The first entry that does not follow from the one before it, or null with the mark of the last where all do. */
export type ChainCheck =
  | { readonly whole: true; readonly upTo: ChainMark }
  | { readonly whole: false; readonly brokenAt: number };

/**
 * Goes along the entries that follow a mark. One changed byte in a body, a hash or a place breaks the chain there: what
 * comes after can be believed as little, so nothing after it is looked at. A chain cannot show that its newest entries
 * were cut off, or all of it made anew: against that stand the codes on the records that owners hold.
 */
export function checkChain(from: ChainMark, entries: Iterable<ChainEntry>): ChainCheck {
  let mark: ChainMark = { step: from.step, hash: from.hash };
  for (const { step, before, body, hash } of entries) {
    const isNext = step === mark.step + 1 && before === mark.hash && hash === chainHash(before, body);
    if (!isNext) return { whole: false, brokenAt: mark.step + 1 };
    mark = { step, hash };
  }
  return { whole: true, upTo: mark };
}
