import * as z from "zod";
import { type SlipReadingRequest, TOOL_KINDS } from "#shared/slip/torque-tool.ts";

/** Three is the fewest readings whose spread says anything about the spread of the next. */
const FEWEST_READINGS = 3;
const MOST_READINGS = 50;

/** Far above any slip, far below a slipped decimal point. */
const slip = z.number().positive().max(200);

const BandSchema = z
  .strictObject({ low: z.number().min(0).max(200), high: slip })
  .refine(({ low, high }) => low < high, { path: ["high"], message: "more than low" });

const ToolSchema = z.strictObject({
  kind: z.enum(TOOL_KINDS),
  accuracyPercent: z
    .number()
    .min(0.001)
    .max(20)
    .describe("Limit of error, % of the reading; where k is given, the certificate's expanded uncertainty"),
  resolution: z.number().min(0).max(20).describe("Smallest step the tool shows, lbf.ft"),
  k: z.number().min(1).max(4).optional().describe("Coverage factor of the certificate"),
});

/** Final slip as read on the bench, all torques in lbf·ft. */
export const SlipReadingSchema = z.strictObject({
  target: slip,
  band: BandSchema,
  readings: z.array(slip).min(FEWEST_READINGS).max(MOST_READINGS),
  tool: ToolSchema,
}) satisfies z.ZodType<SlipReadingRequest>;
