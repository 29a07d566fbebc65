/** Units a thermometer at the bench reads. */
export type TemperatureUnit = "°C" | "°F";

/** A reading on a thermometer, never a difference: the zeros of the two scales differ. */
export type Temperature<Unit extends TemperatureUnit = TemperatureUnit> = {
  readonly value: number;
  readonly unit: Unit;
};

/** NIST SP 811 (2008), Appendix B: t(°C) = (t(°F) - 32) / 1.8, exactly. */
const FREEZING_F = 32;
const FAHRENHEIT_PER_KELVIN = 1.8;

/** @example temperature(120, "°C") // { value: 120, unit: "°C" } */
export const temperature = <Unit extends TemperatureUnit>(value: number, unit: Unit): Temperature<Unit> => ({
  value,
  unit,
});

/** The number of a temperature on the scale asked for, unrounded. @example temperatureIn("°F", temperature(100, "°C")) // 212 */
export function temperatureIn(unit: TemperatureUnit, { value, unit: own }: Temperature): number {
  if (unit === own) return value;
  return unit === "°C" ? (value - FREEZING_F) / FAHRENHEIT_PER_KELVIN : value * FAHRENHEIT_PER_KELVIN + FREEZING_F;
}
