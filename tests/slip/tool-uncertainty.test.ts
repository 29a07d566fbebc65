import { describe, expect, it } from "vitest";
import { clickLimitPercent } from "#shared/slip/click-limit.ts";
import { stepIsCoarse } from "#shared/slip/tool-uncertainty.ts";
import { lbfft, newtonMetres } from "#shared/units/torque.ts";
import { aTool } from "#tests/slip/slip-readings.ts";

describe("the limits of torque tools, ISO 6789-1:2017", () => {
  // Setting tools: 6 % up to 10 N·m, 4 % above.
  it.each([
    [newtonMetres(9.99), 6],
    [newtonMetres(10), 6],
    [newtonMetres(10.01), 4],
    [lbfft(7.3), 6],
    [lbfft(7.4), 4],
    [lbfft(18), 4],
  ])("lets a click wrench at %j be off by %d %%", (at, percent) => {
    expect(clickLimitPercent(at)).toBe(percent);
  });

  // A digit is at most a quarter of the maximum permissible deviation: 4 % of 40 gives 0.4, 6 % of 8 gives 0.12.
  it.each([
    [40, 4, 0.4, false],
    [40, 4, 0.401, true],
    [8, 6, 0.12, false],
    [8, 6, 0.121, true],
  ])("at %d with %d %% finds a step of %d coarse: %j", (reading, accuracyPercent, resolution, coarse) => {
    expect(stepIsCoarse(aTool({ accuracyPercent, resolution }), reading)).toBe(coarse);
  });
});
