import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jobNumber, nextSerial, readJobNumber } from "#shared/shop/job-number.ts";

const SYMBOLS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const ok = (value: string) => ({ ok: true, value });
const WRONG = { ok: false, refusal: { reason: "check-symbol-wrong" } };
const NOT_ONE = { ok: false, refusal: { reason: "not-a-job-number" } };

/** Serials as the shop gives them out: those whose check symbol is punctuation are skipped. */
const serials = fc.integer({ min: 0, max: 32 ** 8 - 40 }).map(nextSerial);

// Crockford, "Base 32": symbols without I, L, O, U; the check symbol is the number modulo 37. Values worked out
// from that definition by hand and by a second program.
describe("a job number", () => {
  it.each([
    [0, "00"],
    [31, "ZZ"],
    [37, "150"],
    [1234, "16JD"],
    [1_000_000, "YGJ01"],
    [33_554_431, "ZZZZZK"],
  ])("%d is printed %s, and read back", (serial, printed) => {
    expect(jobNumber(serial)).toBe(printed);
    expect(readJobNumber(printed)).toEqual(ok(printed));
  });

  it.each([32, 33, 34, 35, 36, 1_048_575, 123_456_789])("is never %d, whose check symbol is punctuation", (serial) => {
    expect(nextSerial(serial - 1)).toBeGreaterThan(serial);
  });

  it("follows the last, skipping five of 37", () => {
    const given: number[] = [];
    for (let serial = nextSerial(-1); serial < 370; serial = nextSerial(serial)) given.push(serial);
    expect(given.length).toBe(32 * 10);
    expect(given.every((serial) => serial % 37 < 32)).toBe(true);
    expect(given).toEqual([...given].sort((one, other) => one - other));
  });

  it("is written in the symbols only, and read back as it was", () => {
    fc.assert(
      fc.property(serials, (serial) => {
        const printed = jobNumber(serial);
        expect(printed).toMatch(new RegExp(`^[${SYMBOLS}]{2,9}$`));
        expect(readJobNumber(printed)).toEqual(ok(printed));
      }),
    );
  });

  it("with any one symbol wrong is refused", () => {
    fc.assert(
      fc.property(serials, (serial) => {
        const printed = jobNumber(serial);
        for (const [at, right] of [...printed].entries()) {
          for (const wrong of SYMBOLS.replace(right, "")) {
            const mistyped = printed.slice(0, at) + wrong + printed.slice(at + 1);
            expect(readJobNumber(mistyped), mistyped).toEqual(WRONG);
          }
        }
      }),
    );
  });

  it("with any two neighbours swapped is refused", () => {
    fc.assert(
      fc.property(serials, (serial) => {
        const printed = jobNumber(serial);
        for (let at = 0; at + 1 < printed.length; at += 1) {
          const [one, other] = [printed[at]!, printed[at + 1]!];
          if (one === other) continue;
          const swapped = printed.slice(0, at) + other + one + printed.slice(at + 2);
          expect(readJobNumber(swapped), swapped).toEqual(WRONG);
        }
      }),
    );
  });

  it.each([
    ["16jd", "16JD"],
    ["l6-jd", "16JD"],
    ["I6 JD", "16JD"],
    ["  16-JD\n", "16JD"],
    ["0016JD", "16JD"],
    ["oo", "00"],
    ["15O", "150"],
  ])("is read as it is said or typed: %j is %s", (typed, printed) => {
    expect(readJobNumber(typed)).toEqual(ok(printed));
  });

  it.each(["", "1", "-", "16U", "16J*", "16J~", "é1", "1234567890", "16JD?", "１６"])("is not %j", (typed) => {
    expect(readJobNumber(typed)).toEqual(NOT_ONE);
  });

  it("is read or refused, whatever is typed", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (typed) => {
        const read = readJobNumber(typed);
        if (read.ok) expect(readJobNumber(read.value)).toEqual(read);
      }),
    );
  });
});
