import * as z from "zod";
import type { Booking, Job } from "#shared/shop/booking.ts";
import { ContactSchema, ReturnToSchema } from "#shared/shop/people.ts";
import { WishAnswers } from "#src/api/answers-body.ts";
import { SlotAnswer, slotAnswer } from "#src/api/slot-bodies.ts";

const line = (most: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(most)
    .regex(/^\P{Cc}*$/u, "one line, without control characters");

/** What POST /api/bookings takes. */
export const BookingRequest = z.strictObject({
  hold: z.string().min(1).max(64),
  answers: WishAnswers,
  contact: ContactSchema,
  returnTo: ReturnToSchema,
  serial: line(40).optional().describe("Serial number of the unit"),
  goAheadMinor: z.int().min(0).max(100_000_000).optional().describe("Go ahead without asking up to, in minor units"),
  priceMinor: z
    .int()
    .min(0)
    .max(100_000_000)
    .optional()
    .describe("The price that was shown, in minor units; where it has changed since, nothing is booked"),
  reminders: z
    .strictObject({ consent: z.literal(true), text: z.string().trim().min(1).max(1000) })
    .optional()
    .describe("What the owner agreed to be told, as it was shown"),
});

/** What POST /api/bookings answers. */
export const BookingAnswer = z.strictObject({
  booking: z.string(),
  jobNumber: z.string(),
  tagUrl: z.url().describe("The job tag; whoever has this address may see and change the booking"),
  ownerToken: z.string().describe("Bearer token to move or cancel the booking"),
});

export const bookingAnswer = (booking: Booking, ownerToken: string, origin: string): z.infer<typeof BookingAnswer> => ({
  booking: booking.id,
  jobNumber: booking.jobNumber,
  tagUrl: `${origin}/tag/${ownerToken}`,
  ownerToken,
});

/** What PATCH /api/bookings/{id} takes. */
export const MoveRequest = z.strictObject({ slot: z.string().min(1).max(40).describe("Id of an offer") });

/** What PATCH and DELETE /api/bookings/{id} answer. */
export const ChangeAnswer = SlotAnswer.extend({
  booking: z.string(),
  state: z.enum(["booked", "cancelled"]),
  sequence: z.int().min(0).describe("Counts the changes, as in the calendar file"),
});

export const changeAnswer = ({ state, booking: { id, sequence, time } }: Job): z.infer<typeof ChangeAnswer> => ({
  booking: id,
  state: state === "cancelled" ? "cancelled" : "booked",
  ...slotAnswer(time),
  sequence,
});
