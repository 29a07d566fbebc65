import { findReceipt } from "#src/ledger/booking-rows.ts";
import { duePublications, postponePublication, setPublished } from "#src/ledger/publication-rows.ts";
import { slotBoard } from "#src/ledger/slot-board.ts";
import { boardKey, type Turn } from "#src/ledger/turn.ts";

/** Where everybody may read the board and the receipts, perhaps a minute late. The object is the only writer. */
export type BoardStore = {
  /** May fail; it is tried again later. */
  readonly put: (key: string, value: { readonly version: number }) => Promise<void>;
};

/** Runs a decision in one transaction, at the present moment. */
type Decide = <Answer>(decision: (turn: Turn) => Answer) => Answer;

const LONGEST_WAIT_MS = 5 * 60_000;

/**
 * Tells what is due, one after another, so that an older version never comes after a newer one. Each value is read
 * when it is its turn: after every `await` the rows may have changed.
 */
export async function publishDue(
  decide: Decide,
  store: BoardStore,
  report: (error: unknown, key: string) => void,
): Promise<void> {
  const due = decide(({ sql, now }) => duePublications(sql, now));
  for (const { key, tries } of due) {
    try {
      const told = decide((turn) => publicationNow(turn, key));
      if (told === null) continue;
      if (told.value !== null) await store.put(key, told.value);
      decide(({ sql, now }) => setPublished(sql, told.publication, now));
    } catch (error) {
      report(error, key);
      decide(({ sql, now }) => postponePublication(sql, key, now + waitAfter(tries)));
    }
  }
}

function publicationNow(turn: Turn, key: string) {
  const publication = duePublications(turn.sql, turn.now).find((due) => due.key === key);
  if (publication === undefined) return null;
  const value = key === boardKey(turn.shop) ? slotBoard(turn) : findReceipt(turn.sql, publication.subject);
  return { publication: value === null ? publication : { ...publication, version: value.version }, value };
}

/** 2 s, 4 s, 8 s … */
const waitAfter = (tries: number): number => Math.min(2000 * 2 ** tries, LONGEST_WAIT_MS);
