import type { BusySpan } from "#shared/calendar/busy-span.ts";
import { findOffers } from "#shared/calendar/find-offers.ts";
import { busyShare, fullYear, NOW, THREE_BENCHES, usualYear } from "#tests/speed/full-calendar.ts";
import { atMostMs, type Measured } from "#tests/speed/measured.ts";
import { medianOf, runInTurn } from "#tests/speed/rounds.ts";

const DAYS_FREE = 7;
const USUAL_SHARE = 0.7;

/** One search for offers, from the busy time as the ledger has it to the offers as they are told. */
export async function measureSlotSearch(): Promise<readonly Measured[]> {
  const [full, usual] = [fullYear(DAYS_FREE), usualYear(USUAL_SHARE)];
  const soonest = { full: search(full)[0]?.date ?? "", usual: search(usual)[0]?.date ?? "" };
  if (soonest.full < "2028-04-20" || soonest.usual > "2027-05-31") throw new Error("The calendars are not as meant.");
  const rounds = await runInTurn(
    { full: () => void search(full), usual: () => void search(usual) },
    { rounds: 300, warmUp: 100 },
  );
  return [
    atMostMs(
      `slot search: a year of 3 benches, ${percent(busyShare(full))} full, room only in its last days`,
      1000 * medianOf(rounds, (it) => it.full),
      2,
    ),
    {
      what: `  the usual case, ${percent(busyShare(usual))} full, room within the month`,
      measured: `${(1000 * medianOf(rounds, (it) => it.usual)).toFixed(2)} ms`,
    },
  ];
}

const search = (busy: readonly BusySpan[]) =>
  findOffers({ settings: THREE_BENCHES, busy, verdict: "slip-check", now: NOW });

const percent = (share: number): string => `${Math.round(share * 100)} %`;
