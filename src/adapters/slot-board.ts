import { type SlotBoard, SlotBoardSchema } from "#shared/calendar/board-schema.ts";
import { boardKey } from "#src/ledger/turn.ts";

/** A board older than this is not shown; the shop's object is asked instead. */
const OLDEST_MS = 60_000;

export type BoardReader = (now: number) => Promise<SlotBoard | null>;

/**
 * Reads the published board. KV may answer with an older copy than it did before, so a version lower than one seen
 * already is passed over. That memory lasts as long as the isolate: a hint, no promise.
 */
export function boardReader(kv: KVNamespace | undefined, shop: string): BoardReader {
  let seen = 0;
  return async (now) => {
    const board = await publishedBoard(kv, boardKey(shop));
    if (board === null || board.version < seen || now - board.generatedAt > OLDEST_MS) return null;
    seen = board.version;
    return board;
  };
}

/** `null` where there is none that can be read: the board only spares the object, nothing rests on it. */
async function publishedBoard(kv: KVNamespace | undefined, key: string): Promise<SlotBoard | null> {
  try {
    const parsed = SlotBoardSchema.safeParse(await kv?.get(key, "json"));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
