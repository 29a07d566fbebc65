import * as fc from "fast-check";
import { expect, it } from "vitest";
import {
  instantOfQuantum,
  plusQuanta,
  QUANTUM_MINUTES,
  quantaFor,
  quantumAt,
  quantumFrom,
} from "#shared/calendar/quantum.ts";

const instants = fc.integer({ min: -4_000_000_000_000, max: 4_000_000_000_000 });

it("puts every instant into the one quantum that has begun and not ended", () => {
  fc.assert(
    fc.property(instants, (instant) => {
      const found = quantumAt(instant);
      expect(instantOfQuantum(found)).toBeLessThanOrEqual(instant);
      expect(instantOfQuantum(plusQuanta(found, 1))).toBeGreaterThan(instant);
    }),
  );
});

it("waits for the next quantum unless one just begins", () => {
  fc.assert(
    fc.property(instants, (instant) => {
      const found = quantumFrom(instant);
      expect(instantOfQuantum(found)).toBeGreaterThanOrEqual(instant);
      expect(instantOfQuantum(plusQuanta(found, -1))).toBeLessThan(instant);
    }),
  );
});

it.each([
  [15, 1],
  [16, 2],
  [60, 4],
  [300, 20],
])("%d minutes fill %d quanta", (minutes, quanta) => {
  expect(quantaFor(minutes)).toBe(quanta);
  expect(quanta * QUANTUM_MINUTES).toBeGreaterThanOrEqual(minutes);
});
