import { hashStart, type RecordCode, recordCode } from "#shared/job/record-code.ts";
import type { Service, ServiceRecord } from "#shared/job/record-schema.ts";

/** An entry of the chain with its record as read. */
export type SealedRecord = { readonly step: number; readonly hash: string; readonly record: ServiceRecord };

/** The little that anybody who holds a record's code may see of it: enough to lay it beside the paper. */
export type RecordGlimpse = {
  readonly date: string;
  readonly family: Service["unit"]["family"];
  /** The last symbols of the unit's serial number; null = not known. */
  readonly serialEnd: string | null;
  /** Mean of the final readings, lbf·ft; null = not read. */
  readonly slipLeft: number | null;
};

/** What a code says of its record. */
export type CodeStanding =
  | { readonly is: "genuine"; readonly glimpse: RecordGlimpse }
  /** A later record has taken its place. */
  | { readonly is: "corrected"; readonly by: string; readonly glimpse: RecordGlimpse }
  | { readonly is: "taken-back" }
  | { readonly is: "not-known" }
  /** The chain is broken at this record or before it, or after it, where a correction may have been lost. */
  | { readonly is: "damaged"; readonly where: "here" | "later" };

/**
 * Where a code stands among the records of its job, oldest first.
 * @param brokenAt the first step at which the chain does not hold; null = it holds to its end
 */
export function codeStanding(
  code: RecordCode,
  records: readonly SealedRecord[],
  brokenAt: number | null,
): CodeStanding {
  const named = records.find(({ hash }) => hashStart(hash) === code.hashStart);
  if (named === undefined) return brokenAt === null ? { is: "not-known" } : { is: "damaged", where: "here" };
  if (brokenAt !== null) return { is: "damaged", where: brokenAt <= named.step ? "here" : "later" };
  const newest = records.at(-1);
  if (newest === undefined || newest.record.kind === "withdrawal" || named.record.kind === "withdrawal") {
    return { is: "taken-back" };
  }
  const glimpse = glimpseOf(named.record.service);
  return newest === named
    ? { is: "genuine", glimpse }
    : { is: "corrected", by: recordCode(code.job, newest.hash), glimpse };
}

/** The record of a job that counts: its newest, unless that took it back. */
export function recordThatCounts(records: readonly SealedRecord[]): SealedService | null {
  const newest = records.at(-1);
  return newest === undefined ? null : withService(newest);
}

/** An entry that holds a service. */
export type SealedService = SealedRecord & { readonly record: { readonly service: Service } };

export const withService = ({ step, hash, record }: SealedRecord): SealedService | null =>
  record.kind === "withdrawal" ? null : { step, hash, record };

const SERIAL_SYMBOLS_SHOWN = 4;

function glimpseOf({ date, unit, left }: Service): RecordGlimpse {
  return {
    date,
    family: unit.family,
    serialEnd: unit.serial === null ? null : unit.serial.slice(-SERIAL_SYMBOLS_SHOWN),
    slipLeft: left.slip?.mean ?? null,
  };
}
