import * as fc from "fast-check";
import { expect, it } from "vitest";
import { majorText, minorDigits, readMajor } from "#shared/shop/minor-units.ts";

/** Minor units after ISO 4217. */
it.each([
  ["USD", 2],
  ["EUR", 2],
  ["JPY", 0],
  ["KWD", 3],
])("knows that %s has %i digits of minor units", (currency, digits) => {
  expect(minorDigits(currency)).toBe(digits);
});

it.each([
  ["125", 2, 12_500],
  ["125.5", 2, 12_550],
  ["125,50", 2, 12_550],
  ["0.07", 2, 7],
  [" 1 250.00 ", 2, 125_000],
  ["1.005", 3, 1005],
  ["80", 0, 80],
])("reads %j with %i digits as %i", (text, digits, minor) => {
  expect(readMajor(text, digits)).toEqual({ ok: true, value: minor });
});

it.each([
  ["1,250", 2],
  ["1.234", 2],
  ["80.5", 0],
  ["-5", 2],
  ["12.", 2],
  ["", 2],
  ["1e3", 2],
  ["$5", 2],
  ["1234567890", 2],
])("does not guess at %j with %i digits", (text, digits) => {
  expect(readMajor(text, digits).ok).toBe(false);
});

it("reads back every price that it writes, to the last minor unit", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000_000 }), fc.constantFrom(0, 2, 3), (minor, digits) => {
      expect(readMajor(majorText(minor, digits), digits)).toEqual({ ok: true, value: minor });
    }),
  );
});
