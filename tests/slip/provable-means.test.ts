import * as fc from "fast-check";
import { expect, it } from "vitest";
import { provableAim, provableHundredths, provableMeans } from "#shared/slip/provable-means.ts";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";

const tools: fc.Arbitrary<TorqueTool> = fc.record(
  {
    kind: fc.constantFrom("electronic" as const, "beam" as const, "dial" as const),
    accuracyPercent: fc.double({ min: 0.1, max: 6, noNaN: true }),
    resolution: fc.double({ min: 0, max: 0.5, noNaN: true }),
    k: fc.double({ min: 1, max: 3, noNaN: true }),
  },
  { requiredKeys: ["kind", "accuracyPercent", "resolution"] },
);
const bands = fc
  .tuple(fc.double({ min: 8, max: 20, noNaN: true }), fc.double({ min: 0.1, max: 3, noNaN: true }))
  .map(([low, wide]) => ({ low, high: low + wide }));

const decided = (mean: number, band: { low: number; high: number }, tool: TorqueTool) =>
  slipReading({ target: mean, band, readings: [mean, mean, mean], tool }, SLIP_DEFAULTS).decision;

it("names the very means at which readings all alike begin and cease to be accepted", () => {
  fc.assert(
    fc.property(bands, tools, (band, tool) => {
      const means = provableMeans(band, tool, SLIP_DEFAULTS);
      fc.pre(means !== null);
      // Ends nearer to each other than the step beside them say nothing.
      fc.pre(means.high - means.low > 1e-5);
      expect(decided(means.low + 1e-6, band, tool)).toBe("accept");
      expect(decided(means.high - 1e-6, band, tool)).toBe("accept");
      expect(decided(means.low - 1e-6, band, tool)).not.toBe("accept");
      expect(decided(means.high + 1e-6, band, tool)).not.toBe("accept");
    }),
    {
      examples: [
        [
          { low: 17.5, high: 18.1 },
          { kind: "electronic", accuracyPercent: 1, resolution: 0.05 },
        ],
      ],
    },
  );
});

it("names none only where no mean of the band is accepted", () => {
  const places = Array.from({ length: 41 }, (_, index) => index / 40);
  fc.assert(
    fc.property(bands, tools, (band, tool) => {
      fc.pre(provableMeans(band, tool, SLIP_DEFAULTS) === null);
      for (const place of places) {
        expect(decided(band.low + place * (band.high - band.low), band, tool)).not.toBe("accept");
      }
    }),
  );
});

it("lets a click wrench prove nothing", () => {
  const click = { kind: "click", accuracyPercent: 0.1, resolution: 0 } as const;
  expect(provableMeans({ low: 5, high: 30 }, click, SLIP_DEFAULTS)).toBeNull();
});

it("aims at the target, or at what is nearest to it of what can be proved", () => {
  expect(provableAim(18, { low: 17.67, high: 17.92 })).toBe(17.92);
  expect(provableAim(12.5, { low: 12.2, high: 12.8 })).toBe(12.5);
  expect(provableAim(13, { low: 13.2, high: 13.8 })).toBe(13.2);
  expect(provableAim(18, null)).toBe(18);
});

it("shows no mean that could not be proved", () => {
  expect(provableHundredths({ low: 17.669, high: 17.928 })).toEqual({ low: 17.67, high: 17.92 });
});
