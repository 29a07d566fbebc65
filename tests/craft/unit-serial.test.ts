import { expect, it } from "vitest";
import { unitSerial } from "#shared/craft/unit-serial.ts";

it.each([
  ["SN-0042", "SN0042"],
  [" sn 0042", "SN0042"],
  ["ＳＮ００４２", "SN0042"],
  ["sn.00/42", "SN0042"],
])("knows the unit again by %s", (typed, serial) => {
  expect(unitSerial(typed)).toBe(serial);
});

// The last is one ligature of four words, eight times over: 18 letters and gaps each.
it.each([null, "", "n/a", "none", "not readable", "42", "#1", `${"\u{fdfa}".repeat(8)}1`])(
  "takes %s for no serial number",
  (typed) => {
    expect(unitSerial(typed)).toBeNull();
  },
);
