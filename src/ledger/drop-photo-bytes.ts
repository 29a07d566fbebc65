import { forgetBytes, takeDueBytes } from "#src/ledger/photo-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Where photos' bytes lie. */
export type PhotoBytesStore = {
  /** Bears being told twice, and what is not there is dropped already. May fail; it is tried again later. */
  readonly drop: (id: string) => Promise<void>;
};

/** Runs a decision in one transaction, at the present moment. */
type Decide = <Answer>(decision: (turn: Turn) => Answer) => Answer;

const TRY_AGAIN_AFTER_MS = 10 * 60_000;
/** One alarm drops no more than this; the rest is due at once again. */
const MOST_AT_ONCE = 50;

/**
 * Drops the bytes of removed photos, and those that no photo has claimed in time. They are given up in the database
 * first, so that no row can claim what is being dropped, and forgotten only after they are gone.
 * @param store null where there is none any more: they are kept in mind until there is
 */
export async function dropPhotoBytes(
  decide: Decide,
  store: PhotoBytesStore | null,
  report: (error: unknown, what: string) => void,
): Promise<void> {
  const due = decide(({ sql, now }) => takeDueBytes(sql, now, now + TRY_AGAIN_AFTER_MS, MOST_AT_ONCE));
  for (const id of store === null ? [] : due) {
    try {
      await store?.drop(id);
      decide(({ sql }) => forgetBytes(sql, id));
    } catch (error) {
      report(error, "photo bytes");
    }
  }
}
