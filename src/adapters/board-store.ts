import type { BoardStore } from "#src/ledger/publish.ts";

/** Workers KV as the place where the board and the receipts are read; the version stands beside the value too. */
export function kvBoardStore(kv: KVNamespace | undefined): BoardStore {
  return {
    put: async (key, value) => {
      await kv?.put(key, JSON.stringify(value), { metadata: { version: value.version } });
    },
  };
}
