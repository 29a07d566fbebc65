import { runInDurableObject } from "cloudflare:test";
import type { JobMoveName } from "#shared/job/job-moves.ts";
import type { SheetEntry, SheetStepId } from "#shared/job/sheet-entry.ts";
import type { BookingWish } from "#shared/shop/booking.ts";
import { serialOf } from "#shared/shop/job-number.ts";
import { DULL_ENTRIES } from "#tests/job/a-sheet.ts";
import { aBooking, type LedgerStub } from "#tests/ledger/a-ledger.ts";

export type Entries = Readonly<Partial<Record<SheetStepId, SheetEntry>>>;

/** Fits the band of 12 to 13 lbf·ft that a standard craft ridden gently is set for. */
export const GENTLE_SLIPS = {
  "as-found-slip": { ...DULL_ENTRIES["as-found-slip"], readings: [10.8, 10.9, 10.85], breakaway: 12.1 },
  "slip-before-lock": {
    ...DULL_ENTRIES["slip-before-lock"],
    tries: [{ nutDegrees: 250, shimMm: null, slip: 11, loosened: false }],
  },
  "final-slip": { ...DULL_ENTRIES["final-slip"], readings: [12.5, 12.55, 12.5] },
} as Entries;

/** Writes a job's whole sheet: nothing out of the way but what the test says. */
export const writeSheet = (ledger: LedgerStub, number: string, change: Entries = {}) =>
  runInDurableObject(ledger, (_, { storage: { sql } }) => {
    for (const [step, entry] of Object.entries({ ...DULL_ENTRIES, ...GENTLE_SLIPS, ...change })) {
      sql.exec(
        `INSERT INTO sheet_entry (job, step, version, key, at, staff, entry)
         SELECT ?1, ?2, coalesce(max(version), 0) + 1, ?1 || ?2 || coalesce(max(version), 0), 0, 'Sedge Hallow', ?3
         FROM sheet_entry WHERE job = ?1 AND step = ?2`,
        serialOf(number),
        step,
        JSON.stringify(entry),
      );
    }
  });

/** Takes a job by buttons as far as asked, from the state that it is in. */
export async function takeTo(ledger: LedgerStub, number: string, moves: readonly JobMoveName[]): Promise<void> {
  for (const move of moves) {
    const ifState = (await ledger.job(number))?.state ?? "booked";
    const moved = await ledger.moveJob({ number, move, staff: "Wilma Bench", note: null, ifState });
    if (!moved.ok) throw new Error(`Not ${move}: ${JSON.stringify(moved.refusal)}`);
  }
}

/** A job from its booking to the parcel back. */
export async function aShippedJob(
  ledger: LedgerStub,
  { entries, booking }: { readonly entries?: Entries; readonly booking?: Partial<BookingWish> } = {},
) {
  const booked = await aBooking(ledger, { ...(booking && { booking }) });
  await writeSheet(ledger, booked.number, entries);
  await takeTo(ledger, booked.number, ["receive", "start", "finish", "ship"]);
  return booked;
}
