import * as z from "zod";
import type { Receipt } from "#shared/shop/booking.ts";

/** A receipt as the shop's object publishes it: epoch milliseconds, nothing personal. */
export const PublishedReceipt = z
  .object({
    booking: z.string(),
    state: z.enum(["booked", "cancelled"]),
    startsAt: z.int(),
    endsAt: z.int(),
    bench: z.string(),
    version: z.int(),
  })
  .readonly() satisfies z.ZodType<Receipt>;

/** What GET /api/bookings/{id} answers. */
export const ReceiptAnswer = z.strictObject({
  booking: z.string(),
  state: z.enum(["booked", "cancelled"]),
  bench: z.string(),
  startsAt: z.iso.datetime().describe("UTC"),
  endsAt: z.iso.datetime().describe("UTC"),
  sequence: z.int().describe("Counts the changes of the booking"),
});

export const receiptAnswer = (receipt: Receipt): z.infer<typeof ReceiptAnswer> => ({
  booking: receipt.booking,
  state: receipt.state,
  bench: receipt.bench,
  startsAt: new Date(receipt.startsAt).toISOString(),
  endsAt: new Date(receipt.endsAt).toISOString(),
  sequence: receipt.version,
});
