import { Hono } from "hono";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { BookingRequest, bookingAnswer } from "#src/api/booking-bodies.ts";
import { bookingWish } from "#src/api/booking-wish.ts";
import { readWish } from "#src/api/read-wish.ts";
import { receiptAnswer } from "#src/api/receipt-body.ts";
import { bookingRefused } from "#src/api/wish-refused.ts";
import { ownerToken } from "#src/http/owner-link.ts";
import { problem } from "#src/http/problem.ts";

/** A held slot made a booking, and the receipt of it. */
export function bookingRoutes(needs: Omit<ApiNeeds, "publishedBoard">) {
  const { shop, linkKey, origin, publishedReceipt } = needs;
  return new Hono()
    .post("/bookings", async (c) => {
      const read = await readWish(c.req.raw, BookingRequest, { ...needs, scope: scopeOf });
      if (!read.ok) return read.refusal;
      const wish = await bookingWish(read.value, needs);
      if (!wish.ok) return wish.refusal;
      const booked = await shop.book(wish.value);
      if (!booked.ok) return bookingRefused(booked.refusal);
      const token = await ownerToken(linkKey, booked.value.id, booked.value.linkGeneration);
      return c.json(bookingAnswer(booked.value, token, origin(c.req.raw)), 201);
    })
    .get("/bookings/:id", async (c) => {
      const id = c.req.param("id");
      const receipt = (await publishedReceipt(id)) ?? (await shop.receipt(id));
      return receipt === null ? noSuchBooking() : c.json(receiptAnswer(receipt));
    });
}

/** A hold is one caller's alone, who may ask again from another network. */
const scopeOf = ({ hold }: { readonly hold: string }): string => `POST /api/bookings ${hold}`;

const noSuchBooking = (): Response => problem({ status: 404, detail: "There is no such booking." });
