import fc from "fast-check";
import { expect, it } from "vitest";
import { setBeforeLock } from "#shared/job/set-before-lock.ts";
import { aCase } from "#tests/job/a-sheet.ts";

const SHOP = { slip: { lockNutRise: 1.5, coverage: 0.95 }, setNut: { riseSd: 0.3, riseObservationSd: 0.3 } };
const rise = (by: number) => ({ before: 16, after: 16 + by });

it("starts from the settings' rise, and follows what the shop has seen", () => {
  expect(setBeforeLock(aCase(), { ...SHOP, rises: [] })).toMatchObject({ set: 16.5, rise: { counted: 0 } });
  const rises = Array.from({ length: 20 }, () => rise(1.8));
  // Weights 1 and 20: (1.5 + 20 · 1.8) / 21.
  expect(setBeforeLock(aCase(), { ...SHOP, rises })?.set).toBeCloseTo(18 - (1.5 + 20 * 1.8) / 21, 9);
});

it("gives no figure without a target, or for a unit whose lock nut raises nothing that is known", () => {
  expect(setBeforeLock(aCase({ aim: null }), { ...SHOP, rises: [] })).toBeNull();
  for (const unitFamily of ["shim-stack", "unknown"] as const) {
    expect(setBeforeLock(aCase({ unitFamily }), { ...SHOP, rises: [rise(1.5)] })).toBeNull();
  }
});

it("what is too far apart to go by is not gone by", () => {
  const rises = [rise(1.5), rise(1.5), rise(6), rise(6.2), rise(-4)];
  expect(setBeforeLock(aCase(), { ...SHOP, rises })).toMatchObject({ set: 16.5, rise: { doubtful: true } });
});

it("lies within its own interval, under the target, whatever was seen", () => {
  const seen = fc.array(fc.double({ min: 0, max: 4, noNaN: true }).map(rise), { maxLength: 30 });
  fc.assert(
    fc.property(seen, (rises) => {
      const before = setBeforeLock(aCase(), { ...SHOP, rises })!;
      expect(before.low).toBeLessThan(before.set);
      expect(before.set).toBeLessThan(before.high);
      expect(before.set).toBeLessThanOrEqual(18);
    }),
  );
});
