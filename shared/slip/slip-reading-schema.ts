import * as z from "zod";
import { FEWEST_READINGS, type SlipReadingRequest, TOOL_KINDS } from "#shared/slip/torque-tool.ts";

const MOST_READINGS = 50;

/** A slip as read, lbf·ft: far above any slip, far below a slipped decimal point. */
export const slipTorque = z.number().positive().max(200);

const BandSchema = z
  .strictObject({ low: z.number().min(0).max(200), high: slipTorque })
  .refine(({ low, high }) => low < high, { path: ["high"], message: "more than low" });

/** A torque tool as typed at the bench. */
export const TorqueToolSchema = z.strictObject({
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
  target: slipTorque,
  band: BandSchema,
  readings: z.array(slipTorque).min(FEWEST_READINGS).max(MOST_READINGS),
  tool: TorqueToolSchema,
}) satisfies z.ZodType<SlipReadingRequest>;
