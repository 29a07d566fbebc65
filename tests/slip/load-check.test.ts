import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ChargerLoad, compressionRise, loadCheck, shaftTorque } from "#shared/slip/load-check.ts";
import { pressure } from "#shared/units/pressure.ts";
import { temperature } from "#shared/units/temperature.ts";
import { lbfft, newtonMetres, torqueIn } from "#shared/units/torque.ts";

const relative = (one: number, other: number) => Math.abs(one / other - 1);

const aLoad = (changes: Partial<ChargerLoad> = {}): ChargerLoad => ({
  boost: pressure(0.8 * 101.325, "kPa"),
  inletPressure: pressure(101.325, "kPa"),
  inletTemperature: temperature(15, "°C"),
  massFlowKgPerS: 0.25,
  efficiency: 0.7,
  shaftRpm: 50_000,
  ...changes,
});

describe("compressionRise", () => {
  it.each([
    // Y. A. Çengel and M. A. Boles, Thermodynamics, example 7-14/7-15, with constant specific heat
    ["Çengel and Boles", 285, 8, 0.8, 574.08 - 285, 1e-4],
    // R. S. R. Gorla and A. A. Khan, Turbomachinery, example 4.10, exponent 0.286
    ["Gorla and Khan", 308.46, 4, 0.89, 168.642, 2e-3],
    // V. Ganesan, Gas Turbines, example 8.4
    ["Ganesan", 273, 1.5, 0.83, 40.399, 1e-3],
    // Gas processors' data book case, 54.05 to 432.4 kPa
    ["a data book of gas processors, ideal", 286.8, 432.4 / 54.05, 1, 519.5230938 - 286.8, 1e-9],
    ["a data book of gas processors", 286.8, 432.4 / 54.05, 0.78, 585.1629408 - 286.8, 1e-9],
  ])("agrees with %s", (_, inletK, ratio, efficiency, rise, tolerance) => {
    expect(relative(compressionRise(inletK, ratio, efficiency), rise)).toBeLessThan(tolerance);
  });

  it("is the temperature of a molar work: J. R. Couper and others, 10 416.877 J/mol from 1 to 10 bar at 300 K", () => {
    // 7/2 R a kelvin, R 8.314462618 J/(mol·K)
    expect(relative(3.5 * 8.314462618 * compressionRise(300, 10, 0.78), 10_416.877)).toBeLessThan(1e-6);
    expect(relative(3.5 * 8.314462618 * compressionRise(300, 10, 1), 8125.16)).toBeLessThan(1e-6);
  });
});

describe("shaftTorque", () => {
  it("agrees with V. Ganesan, Gas Turbines, example 8.10: 4084.87 N·m at 6416.49 kW and 15 000 rpm", () => {
    expect(relative(shaftTorque(6_416_490, 15_000).value, 4084.87)).toBeLessThan(1e-5);
  });
});

describe("loadCheck", () => {
  it("agrees with Çengel and Boles: 58.10 kW for 0.2 kg/s from 100 to 800 kPa", () => {
    const { shaftPower, outletTemperature } = loadCheck(
      aLoad({
        boost: pressure(700, "kPa"),
        inletPressure: pressure(100, "kPa"),
        inletTemperature: temperature(285 - 273.15, "°C"),
        massFlowKgPerS: 0.2,
        efficiency: 0.8,
      }),
      lbfft(18),
    );
    expect(relative(shaftPower.value, 58.1)).toBeLessThan(1e-4);
    expect(outletTemperature.value + 273.15).toBeCloseTo(574.08, 2);
    // the book, with tables of enthalpy: 58.0 kW
    expect(relative(shaftPower.value, 58.0)).toBeLessThan(3e-3);
  });

  // Small machines at 288.15 K and an efficiency of 0.70, worked out apart from this code.
  it.each([
    [0.3, 1.5, 40_000, 338.7, 15.24, 3.639],
    [0.25, 1.8, 50_000, 363.4, 18.91, 3.612],
    [0.35, 1.65, 45_000, 351.5, 22.27, 4.726],
  ])("of %d kg/s at a ratio of %d and %d rpm", (massFlowKgPerS, ratio, shaftRpm, outletK, kilowatts, newtonMetre) => {
    const load = aLoad({ massFlowKgPerS, shaftRpm, boost: pressure((ratio - 1) * 101.325, "kPa") });
    const { outletTemperature, shaftPower, impellerTorque, margin } = loadCheck(load, newtonMetres(10));
    expect(outletTemperature.value + 273.15).toBeCloseTo(outletK, 1);
    expect(shaftPower.value).toBeCloseTo(kilowatts, 2);
    expect(torqueIn("N.m", impellerTorque)).toBeCloseTo(newtonMetre, 2);
    expect(margin).toBeCloseTo(10 / newtonMetre, 2);
  });

  it("calls itself a planning figure", () => {
    expect(loadCheck(aLoad(), lbfft(18)).label).toBe("planning figure, not a bench value");
  });

  it("asks for nothing without boost, and leaves any margin", () => {
    expect(loadCheck(aLoad({ boost: pressure(0, "psi") }), lbfft(18))).toMatchObject({
      impellerTorque: { value: 0 },
      margin: Number.POSITIVE_INFINITY,
    });
  });

  it("leaves less margin the more boost and air there is, and the worse the efficiency", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(1, 25), number(0.05, 1), number(0.4, 0.9), number(1.01, 1.5), (psi, flow, efficiency, by) => {
        const margin = (changes: Partial<ChargerLoad>) => loadCheck(aLoad(changes), lbfft(18)).margin;
        const here = { boost: pressure(psi, "psi"), massFlowKgPerS: flow, efficiency };
        expect(margin({ ...here, boost: pressure(psi * by, "psi") })).toBeLessThan(margin(here));
        expect(margin({ ...here, massFlowKgPerS: flow * by })).toBeLessThan(margin(here));
        expect(margin({ ...here, efficiency: efficiency / by })).toBeLessThan(margin(here));
        expect(margin({ ...here, shaftRpm: 50_000 * by })).toBeGreaterThan(margin(here));
      }),
    );
  });
});
