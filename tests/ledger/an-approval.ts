import type { AskWish } from "#shared/job/approval-wish.ts";
import { aBooking, type LedgerStub, MINUTE, setClock } from "#tests/ledger/a-ledger.ts";

/** Friday 2040-05-11, 08:30 in New York: half an hour into the first bench time that a unit posted on Monday can have. */
export const FRIDAY = Date.UTC(2040, 4, 11, 12, 30);

let asked = 0;

export const anAskWish = (number: string, change: Partial<AskWish> = {}): AskWish => ({
  number,
  id: `approval-${asked++}`,
  work: "full-rebuild",
  priceMinor: 42_500,
  currency: "USD",
  why: "The friction washers are worn through.",
  photo: null,
  untilDate: "2040-05-16",
  staff: "Wilma Bench",
  anyPrice: true,
  goAhead: false,
  ...change,
});

/** A slip check on the bench, half an hour into its hour. */
export async function onBench(ledger: LedgerStub, booking: Parameters<typeof aBooking>[1] = {}) {
  const job = await aBooking(ledger, booking);
  await setClock(ledger, FRIDAY);
  await receiveAndStart(ledger, job.number);
  return job;
}

export async function receiveAndStart(ledger: LedgerStub, number: string): Promise<void> {
  for (const [move, ifState] of [
    ["receive", "booked"],
    ["start", "received"],
  ] as const) {
    const moved = await ledger.moveJob({ number, move, staff: "Wilma Bench", note: null, ifState });
    if (!moved.ok) throw new Error(`Not moved: ${JSON.stringify(moved.refusal)}`);
  }
}

/** A job whose owner is asked for a full rebuild. */
export async function askedOwner(ledger: LedgerStub, change: Partial<AskWish> = {}) {
  const job = await onBench(ledger);
  const wish = anAskWish(job.number, change);
  const answer = await ledger.askOwner(wish);
  if (!answer.ok) throw new Error(`Not asked: ${JSON.stringify(answer.refusal)}`);
  return { ...job, approval: wish.id, wish };
}

/** One minute after the last one in which the question of {@link anAskWish} may be answered. */
export const AFTER_UNTIL = Date.UTC(2040, 4, 17, 4) + MINUTE;
