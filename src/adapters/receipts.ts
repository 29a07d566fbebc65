import type { Receipt } from "#shared/shop/booking.ts";
import { PublishedReceipt } from "#src/api/receipt-body.ts";
import { receiptKey } from "#src/ledger/turn.ts";

/** Reads published receipts; `null` where there is none that can be read, and the shop's object is asked instead. */
export function receiptReader(kv: KVNamespace | undefined): (booking: string) => Promise<Receipt | null> {
  return async (booking) => {
    try {
      const parsed = PublishedReceipt.safeParse(await kv?.get(receiptKey(booking), "json"));
      return parsed.success ? parsed.data : null;
    } catch {
      return null;
    }
  };
}
