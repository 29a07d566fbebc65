import fc from "fast-check";
import { parsePhoneNumberFromString } from "libphonenumber-js/min";
import { describe, expect, it } from "vitest";
import { readPhone } from "#src/http/phone.ts";

describe("reading a phone number", () => {
  // Numbers kept for fiction: NANP 555-0100 to 555-0199 (ATIS), Ofcom's drama numbers, ACMA's fictitious numbers.
  it.each([
    { text: "202-555-0143", country: "US", is: "+12025550143" },
    { text: "(202) 555-0143", country: "US", is: "+12025550143" },
    { text: "+1 202 555 0199", country: "GB", is: "+12025550199" },
    { text: "07700 900123", country: "GB", is: "+447700900123" },
    { text: "0491 570 006", country: "AU", is: "+61491570006" },
    { text: "+61 491 570 156", country: "no country", is: "+61491570156" },
    // Seven digits, which only one of the countries behind +1 has.
    { text: "310-0000", country: "US", is: "+13100000" },
  ])("takes $text as dialled in $country for $is", ({ text, country, is }) => {
    expect(readPhone(text, country)).toEqual({ ok: true, value: is });
  });

  it.each(["", "abc", "555-0143", "+12025550", "+1234567890123456", "+999 123456"])("refuses %j", (text) => {
    expect(readPhone(text, "US")).toEqual({ ok: false, refusal: { reason: "not-a-phone-number" } });
  });

  it("reads every number as the library does with all of its own data", () => {
    const digits = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 15 }).map((all) => all.join(""));
    const country = fc.constantFrom("US", "GB", "AU", "FR", "DE", "IT", "MX", "BR", "JP", "KZ", "RU", "AR", "NZ");
    fc.assert(
      fc.property(fc.constantFrom("", "+", "0", "00"), digits, country, (prefix, number, home) => {
        const full = parsePhoneNumberFromString(prefix + number, home as "US");
        const read = readPhone(prefix + number, home);
        expect(read.ok ? read.value : null).toBe(full?.isPossible() ? full.number : null);
      }),
      { numRuns: 2000 },
    );
  });
});
