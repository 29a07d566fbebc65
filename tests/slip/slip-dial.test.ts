import fc from "fast-check";
import { expect, it } from "vitest";
import { type DialFacts, dialAngle, dialScale, dialShapes } from "#shared/slip/slip-dial.ts";

const torque = fc.integer({ min: 100, max: 4000 }).map((it) => it / 100);
const anyFacts: fc.Arbitrary<DialFacts> = fc.record({
  target: fc.option(torque),
  band: fc.option(
    fc.tuple(torque, torque).map(([one, other]) => ({ low: Math.min(one, other), high: Math.max(one, other) + 0.1 })),
  ),
  readings: fc.array(torque, { maxLength: 9 }),
  result: fc.option(fc.record({ mean: torque, expanded: fc.integer({ min: 1, max: 300 }).map((it) => it / 100) })),
});

it("all that is shown lies on the scale, in order, and as far apart as it is", () => {
  fc.assert(
    fc.property(anyFacts, (facts) => {
      const scale = dialScale(facts);
      const values = [
        ...facts.readings,
        ...(facts.band ? [facts.band.low, facts.band.high] : []),
        ...(facts.target === null ? [] : [facts.target]),
      ];
      for (const value of values) {
        expect(value).toBeGreaterThanOrEqual(scale.low - 1e-9);
        expect(value).toBeLessThanOrEqual(scale.high + 1e-9);
        // To scale: the angle is the value's share of the span, worked out the other way round.
        const back = scale.low + (dialAngle(scale, value) / Math.PI) * (scale.high - scale.low);
        expect(back).toBeCloseTo(value, 9);
      }
      expect((scale.high - scale.low) / scale.step).toBeLessThanOrEqual(10.000001);
      expect(scale.high).toBeGreaterThan(scale.low);
    }),
  );
});

it("draws a shape for each reading, and no mean before there is one", () => {
  fc.assert(
    fc.property(anyFacts, (facts) => {
      const count = (part: string) => dialShapes(facts).filter((it) => it.part === part).length;
      expect(count("reading")).toBe(facts.readings.length);
      expect(count("mean")).toBe(facts.result === null ? 0 : 1);
      expect(count("band")).toBe(facts.band === null ? 0 : 1);
      for (const { attributes } of dialShapes(facts)) expect(JSON.stringify(attributes)).not.toMatch(/NaN|null/);
    }),
  );
});

it("the needle stands upright at the middle of the scale", () => {
  const facts = { target: 18, band: { low: 17, high: 19 }, readings: [], result: { mean: 18, expanded: 0.2 } };
  const mean = dialShapes(facts).find(({ part }) => part === "mean");
  expect(mean?.attributes["d"]).toBe("M160 156L160 82");
});
