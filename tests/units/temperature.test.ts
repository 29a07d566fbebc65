import * as fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { temperature, temperatureIn } from "#shared/units/temperature.ts";

const readings = fc.double({ min: -100, max: 1000, noNaN: true });

describe("temperatureIn", () => {
  // NIST SP 811 (2008), Appendix B: t(°C) = (t(°F) - 32)/1.8, exactly.
  it.each([
    [212, 100],
    [32, 0],
    [-40, -40],
    [350, 176.6667],
    [390, 198.8889],
    [320, 160],
  ])("turns %d °F into %d °C", (fahrenheit, celsius) => {
    expect(temperatureIn("°C", temperature(fahrenheit, "°F"))).toBeCloseTo(celsius, 4);
    expect(temperatureIn("°F", temperature(celsius, "°C"))).toBeCloseTo(fahrenheit, 3);
  });

  it("agrees with an independent units library, and comes back", () => {
    fc.assert(
      fc.property(readings, (value) => {
        const celsius = temperatureIn("°C", temperature(value, "°F"));
        expect(celsius).toBeCloseTo(unit(value, "degF").toNumber("degC"), 8);
        expect(temperatureIn("°F", temperature(celsius, "°C"))).toBeCloseTo(value, 10);
        expect(temperatureIn("°F", temperature(value, "°F"))).toBe(value);
      }),
    );
  });
});
