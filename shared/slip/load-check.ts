import { type Power, power } from "#shared/units/power.ts";
import { type Pressure, pressureIn } from "#shared/units/pressure.ts";
import { type Temperature, temperature, temperatureIn } from "#shared/units/temperature.ts";
import { newtonMetres, type Torque, torque, torqueIn } from "#shared/units/torque.ts";

/** One running point of a charger. Mass flow and efficiency are guesses without a flow bench. */
export type ChargerLoad = {
  /** Gauge pressure after the impeller. */
  readonly boost: Pressure;
  /** Absolute pressure and temperature of the air at the inlet. */
  readonly inletPressure: Pressure;
  readonly inletTemperature: Temperature;
  /** Air through the charger, kg/s. */
  readonly massFlowKgPerS: number;
  /** Isentropic efficiency, over 0 up to 1. */
  readonly efficiency: number;
  /** Charger shaft, revolutions a minute. */
  readonly shaftRpm: number;
};

/** What the impeller asks of the shaft. A planning figure, not a bench value. */
export type LoadCheck = {
  readonly label: "planning figure, not a bench value";
  readonly impellerTorque: Torque<"lbf.ft">;
  readonly shaftPower: Power<"kW">;
  readonly outletTemperature: Temperature<"°C">;
  /** Slip target over the impeller's torque: 2 = twice what steady running asks. Speed changes ask for more on top. */
  readonly margin: number;
};

/** Air as a perfect gas: specific heat in J/(kg·K) and ratio of specific heats, as cold-air calculations take them. */
const SPECIFIC_HEAT = 1005;
const HEAT_RATIO = 1.4;
const ZERO_CELSIUS_K = 273.15;

/**
 * Steady torque of the impeller at the charger shaft, and the margin of the slip target over it: isentropic rise over
 * efficiency, power over angular speed. Y. A. Çengel and M. A. Boles, Thermodynamics, ch. 7; H. I. H. Saravanamuttoo
 * and others, Gas Turbine Theory, ch. 4 (both from memory). Needs a boost over 0 for a margin; with none it is infinite.
 * @example loadCheck({ boost: pressure(81.06, "kPa"), inletPressure: pressure(101.325, "kPa"), inletTemperature:
 *   temperature(15, "°C"), massFlowKgPerS: 0.25, efficiency: 0.7, shaftRpm: 50000 }, lbfft(18)).impellerTorque // 2.66 lbf.ft
 */
export function loadCheck(load: ChargerLoad, slipTarget: Torque): LoadCheck {
  const inletK = temperatureIn("°C", load.inletTemperature) + ZERO_CELSIUS_K;
  const ratio = 1 + pressureIn("kPa", load.boost) / pressureIn("kPa", load.inletPressure);
  const riseK = compressionRise(inletK, ratio, load.efficiency);
  const watts = load.massFlowKgPerS * SPECIFIC_HEAT * riseK;
  const impeller = shaftTorque(watts, load.shaftRpm);
  return {
    label: "planning figure, not a bench value",
    impellerTorque: torque(torqueIn("lbf.ft", impeller), "lbf.ft"),
    shaftPower: power(watts / 1000, "kW"),
    outletTemperature: temperature(inletK + riseK - ZERO_CELSIUS_K, "°C"),
    margin: torqueIn("N.m", slipTarget) / impeller.value,
  };
}

/**
 * How much hotter air leaves a compressor than it enters, K: the same sources.
 * @param inletK total temperature at the inlet, K
 * @param ratio total pressure at the outlet over that at the inlet
 * @param efficiency isentropic, over 0 up to 1
 * @example compressionRise(286.8, 8, 0.78) // 298.363 (to 585.163 K)
 */
export const compressionRise = (inletK: number, ratio: number, efficiency: number): number =>
  (inletK * (ratio ** ((HEAT_RATIO - 1) / HEAT_RATIO) - 1)) / efficiency;

/** Torque of a shaft that carries so much power: P/ω. @example shaftTorque(6416490, 15000) // 4084.87 N.m */
export const shaftTorque = (watts: number, rpm: number): Torque<"N.m"> =>
  newtonMetres((watts * 60) / (2 * Math.PI * rpm));
