import * as fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { length, lengthIn } from "#shared/units/length.ts";

const relative = (one: number, other: number) => Math.abs(one / other - 1);
const lengths = fc.double({ min: 1e-4, max: 1e4, noNaN: true });

describe("lengthIn", () => {
  // NIST SP 811 (2008), Appendix B: 1 in = 2.54 cm, exactly.
  it.each([
    [1, 25.4],
    [0.001, 0.0254],
    [12, 304.8],
  ])("turns %d in into %d mm", (inches, millimetres) => {
    expect(relative(lengthIn("mm", length(inches, "in")), millimetres)).toBeLessThan(1e-14);
    expect(relative(lengthIn("in", length(millimetres, "mm")), inches)).toBeLessThan(1e-14);
  });

  it("agrees with an independent units library, and comes back", () => {
    fc.assert(
      fc.property(lengths, (value) => {
        const inches = lengthIn("in", length(value, "mm"));
        expect(relative(inches, unit(value, "mm").toNumber("in"))).toBeLessThan(1e-12);
        expect(relative(lengthIn("mm", length(inches, "in")), value)).toBeLessThan(1e-15 * 4);
        expect(lengthIn("mm", length(value, "mm"))).toBe(value);
      }),
    );
  });
});
