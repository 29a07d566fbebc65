import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import type { BenchSettings } from "#shared/shop/bench-settings.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import { type NamedShelf, SHELVES, type Shelf, sameShelf, shelvesFor } from "#shared/shop/shelf.ts";
import { type Balance, EMPTY } from "#shared/shop/stock-book.ts";

/** A part of a job: what it was planned to take, with what the bench added, and what it took. */
export type JobPart = { readonly part: string; readonly planned: number; readonly used: number };

/** What a job that is not over may still take. */
export type JobNeeds = {
  readonly number: string;
  readonly unitFamily: UnitFamily;
  /** When its bench time starts, epoch milliseconds. */
  readonly startsAt: number;
  readonly parts: readonly JobPart[];
};

/** A job in one of these still takes parts; a unit that is set is closed up, and what was left goes back to the shelf. */
export const RESERVING: readonly JobState[] = [
  "booked",
  "received",
  "on-bench",
  "owner-to-decide",
  "part-to-come",
  "set-aside",
];

/** A job that wants a part, and how many of it. */
export type WantedBy = { readonly number: string; readonly count: number };

/** One shelf as the bench sees it. */
export type StockLine = NamedShelf &
  Balance & {
    /** Planned by jobs that are not over, and not used yet. */
    readonly reserved: number;
    /** On hand and not reserved; below zero where jobs want more than there is. */
    readonly free: number;
    /** Less than the spare is left after what the coming weeks need. */
    readonly low: boolean;
    /** How many to order so that it is not low. */
    readonly order: number;
    /** The jobs of the coming weeks that want it: why it is ordered. */
    readonly wantedBy: readonly WantedBy[];
  };

type StockCase = {
  readonly balances: readonly (Shelf & Balance)[];
  readonly jobs: readonly JobNeeds[];
  readonly settings: Pick<BenchSettings, "spareParts" | "orderAheadDays">;
  readonly now: number;
};

const DAY_MS = 86_400_000;

/** Every shelf: what is there, what is spoken for, and what to order. */
export function stockOf({ balances, jobs, settings, now }: StockCase): readonly StockLine[] {
  const soon = jobs.filter(({ startsAt }) => startsAt <= now + settings.orderAheadDays * DAY_MS);
  return SHELVES.map((shelf) => {
    const balance = balances.find((it) => sameShelf(it, shelf)) ?? EMPTY;
    const reserved = total(wantedFrom(shelf, jobs));
    const wantedBy = wantedFrom(shelf, soon);
    const short = (shelf.spared ? settings.spareParts : 0) - (balance.onHand - total(wantedBy));
    return {
      ...shelf,
      onHand: balance.onHand,
      countAgain: balance.countAgain,
      reserved,
      free: balance.onHand - reserved,
      low: short > 0,
      order: Math.max(0, short),
      wantedBy,
    };
  });
}

/** What a job still takes of a part; what is used is no longer reserved, however much of it. */
export const stillWanted = ({ planned, used }: JobPart): number => Math.max(0, planned - used);

function wantedFrom(shelf: NamedShelf, jobs: readonly JobNeeds[]): readonly WantedBy[] {
  if (shelf.shared) return [];
  return jobs.flatMap(({ number, unitFamily, parts }) => {
    const count = parts
      .filter(({ part }) => shelvesFor(part, unitFamily).some((from) => sameShelf(from, shelf)))
      .reduce((sum, part) => sum + stillWanted(part), 0);
    return count === 0 ? [] : [{ number, count }];
  });
}

const total = (wanted: readonly WantedBy[]): number => wanted.reduce((sum, { count }) => sum + count, 0);
