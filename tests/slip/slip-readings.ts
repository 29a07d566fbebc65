import * as fc from "fast-check";
import { type SlipReadingRequest, TOOL_KINDS, type TorqueTool } from "#shared/slip/torque-tool.ts";

/** The dull case: three readings just under 18 with a good electronic wrench, in lbf·ft. */
export const aReading = (changes: Partial<SlipReadingRequest> = {}): SlipReadingRequest => ({
  target: 18,
  band: { low: 17.5, high: 18.1 },
  readings: [17.8, 17.9, 17.8],
  tool: aTool(),
  ...changes,
});

export const aTool = (changes: Partial<TorqueTool> = {}): TorqueTool => ({
  kind: "electronic",
  accuracyPercent: 1,
  resolution: 0.02,
  ...changes,
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** From a laboratory's to a useless one, with a certificate or with a bare limit of error. */
const tools: fc.Arbitrary<TorqueTool> = fc.record(
  {
    kind: fc.constantFrom(...TOOL_KINDS),
    accuracyPercent: fc.oneof(number(0.05, 1), number(1, 20)),
    resolution: fc.oneof(number(0, 0.1), number(0.1, 1)),
    k: number(1, 4),
  },
  { requiredKeys: ["kind", "accuracyPercent", "resolution"] },
);

export const bands = fc.tuple(number(5, 25), number(0.05, 5)).map(([low, width]) => ({ low, high: low + width }));

/** Any bench, with readings spread about a mean that lies near the band or far from it. */
export const requests: fc.Arbitrary<SlipReadingRequest> = fc
  .record({
    band: bands,
    place: number(-1, 2),
    spreads: fc.array(number(-0.1, 0.1), { minLength: 3, maxLength: 12 }),
    tool: tools,
  })
  .map(({ band, place, spreads, tool }) => {
    const target = band.low + 0.5 * (band.high - band.low);
    const middle = Math.max(1, band.low + place * (band.high - band.low));
    return { target, band, readings: spreads.map((spread) => middle + spread), tool };
  });
