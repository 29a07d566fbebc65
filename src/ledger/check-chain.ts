import { CHAIN_START, type ChainCheck, type ChainMark, chainHash, checkChain } from "#shared/job/record-chain.ts";
import type { RecordCode } from "#shared/job/record-code.ts";
import { type CodeStanding, codeStanding } from "#shared/job/record-standing.ts";
import { entriesAfter, entriesOfJob, recordsOfJob } from "#src/ledger/record-rows.ts";

/** Works the chain out again, and says how far it holds. */
export type ReadChain = {
  /** From the first entry on, all of it. */
  readonly whole: () => ChainCheck;
  /** From where this object has been once already: nothing but itself writes to its storage while it is awake. */
  readonly rest: () => ChainCheck;
};

/** Like the settings: what was read once by an awake object need not be read again. It starts anew whenever it wakes. */
export function chainReader(sql: SqlStorage): ReadChain {
  let mark: ChainMark = CHAIN_START;
  // A break is not mended by what is appended after it, so it is looked for no more: anybody may ask, as often as they like.
  let broken: ChainCheck | null = null;
  const from = (start: ChainMark): ChainCheck => {
    const check = checkChain(start, entriesAfter(sql, start));
    if (check.whole) mark = check.upTo;
    else broken = check;
    return check;
  };
  return { whole: () => from(CHAIN_START), rest: () => broken ?? from(mark) };
}

/** What a code that somebody holds says of its record. The records of its job are worked out again each time. */
export function checkCode(sql: SqlStorage, chain: ReadChain, code: RecordCode): CodeStanding {
  const check = chain.rest();
  const ownBreak = entriesOfJob(sql, code.job).find(({ before, body, hash }) => hash !== chainHash(before, body));
  const brokenAt = Math.min(check.whole ? Infinity : check.brokenAt, ownBreak?.step ?? Infinity);
  return codeStanding(code, recordsOfJob(sql, code.job), brokenAt === Infinity ? null : brokenAt);
}
