import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson, type Json } from "#shared/basics/canonical-json.ts";

const jsonValues = fc.jsonValue().map((value) => JSON.parse(JSON.stringify(value)) as Json);

describe("canonical JSON", () => {
  // RFC 8785, section 3.2.2 and 3.2.3: the sample of primitives, and the order of keys by UTF-16 code units.
  it("writes the sample of RFC 8785, 3.2.2 as it is printed there", () => {
    const sample = {
      numbers: [Number("333333333.33333329"), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '€$\u000f\nA\'B"\\\\"/',
      literals: [null, true, false],
    };
    expect(canonicalJson(sample)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],' +
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it("sorts keys as the sample of RFC 8785, 3.2.3 does", () => {
    const inOrder = ["\r", "1", "\u0080", "\u00f6", "\u20ac", "\ud83d\ude00", "\ufb33"];
    const text = canonicalJson(Object.fromEntries(inOrder.toReversed().map((key) => [key, 0])));
    expect(text).toBe(`{${inOrder.map((key) => `${JSON.stringify(key)}:0`).join(",")}}`);
  });

  it("says the same value, whatever order its keys came in", () => {
    fc.assert(
      fc.property(jsonValues, (value) => {
        const text = canonicalJson(value);
        expect(JSON.parse(text)).toEqual(value);
        expect(canonicalJson(backwards(value))).toBe(text);
        expect(text.includes("\n")).toBe(false);
      }),
    );
  });

  it("leaves out what is undefined, and refuses what JSON cannot hold", () => {
    expect(canonicalJson({ b: undefined, a: 1 })).toBe('{"a":1}');
    for (const number of [Number.NaN, Infinity, -Infinity])
      expect(() => canonicalJson([number])).toThrow("cannot hold");
  });

  it("is UTF-8 that reads back as it was written, even of half a character", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0xd7f0, max: 0xe010 })), (units) => {
        const text = canonicalJson(String.fromCharCode(...units));
        expect(new TextDecoder().decode(new TextEncoder().encode(text))).toBe(text);
      }),
    );
  });
});

function backwards(value: Json): Json {
  if (Array.isArray(value)) return value.map(backwards);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, member]) => [key, backwards(member as Json)]),
  );
}
