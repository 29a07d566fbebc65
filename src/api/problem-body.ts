import * as z from "zod";
import { OfferAnswer } from "#src/api/slot-bodies.ts";
import { VerdictName } from "#src/api/triage-bodies.ts";

/** Problem details (RFC 9457) with the members that this interface adds. */
export const ProblemAnswer = z.looseObject({
  type: z.literal("about:blank"),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  reason: z.string().optional().describe("For programs: why not"),
  errors: z
    .array(z.strictObject({ field: z.string(), accepted: z.string() }))
    .optional()
    .describe("Each field that is not accepted, dotted where nested, and what would be"),
  offers: z.array(OfferAnswer).optional().describe("Fresh offers to choose from instead"),
  verdict: VerdictName.optional().describe("What the answers come to"),
  why: z.string().optional().describe("What is wrong with the slot"),
  priceMinor: z.int().optional().describe("The price as it is now, in minor units"),
  currency: z.string().optional().describe("ISO 4217, of the price"),
  until: z.iso.datetime().optional().describe("Until when the booking could be changed here"),
});
