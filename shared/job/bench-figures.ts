import { type FormFields, readNumber } from "#shared/job/sheet-fields.ts";
import { IMPELLER_ALLOYS } from "#shared/slip/impeller-alloys.ts";
import { type ImpellerHeat, impellerHeat } from "#shared/slip/impeller-heat.ts";
import { type LoadCheck, loadCheck } from "#shared/slip/load-check.ts";
import { length } from "#shared/units/length.ts";
import { pressure } from "#shared/units/pressure.ts";
import { temperature } from "#shared/units/temperature.ts";
import { lbfft } from "#shared/units/torque.ts";

/** A field of a calculator and what it accepts. Each range is a default of this project: a slip of the finger is outside. */
export type FigureField = {
  readonly name: string;
  readonly least: number;
  readonly most: number;
  readonly usual?: string;
};

/** What heat an impeller needs is worked out from these, besides its alloy. */
export const HEAT_FIELDS = [
  { name: "heat.shaftMm", least: 5, most: 100 },
  { name: "heat.interferenceMm", least: -1, most: 1 },
  { name: "heat.clearanceMm", least: 0, most: 1 },
  { name: "heat.roomC", least: -20, most: 50, usual: "20" },
  { name: "heat.soakHours", least: 0, most: 24, usual: "0.5" },
] as const satisfies readonly FigureField[];
export const HEAT_ALLOY = "heat.alloy";

/** The impeller's load is worked out from these. */
export const LOAD_FIELDS = [
  { name: "load.boostPsi", least: 0.1, most: 60 },
  { name: "load.massFlowKgPerS", least: 0.01, most: 3 },
  { name: "load.efficiency", least: 0.1, most: 1 },
  { name: "load.shaftRpm", least: 1000, most: 250_000 },
  { name: "load.inletC", least: -30, most: 60, usual: "20" },
] as const satisfies readonly FigureField[];

/** The atmosphere at sea level, as ISO 2533 has it. */
const ATMOSPHERE_KPA = 101.325;

/**
 * Figures of the impeller's fit as typed; null while a number is missing or out of its range.
 * @example heatFigures({ "heat.alloy": ["2618-T61"], "heat.shaftMm": ["30"], … })?.heatTo // 109.7 °C
 */
export function heatFigures(fields: FormFields): ImpellerHeat | null {
  const read = readAll(HEAT_FIELDS, fields);
  const alloy = IMPELLER_ALLOYS.find((known) => known === fields[HEAT_ALLOY]?.[0]);
  if (read === null || alloy === undefined) return null;
  return impellerHeat({
    alloy,
    shaft: length(read["heat.shaftMm"], "mm"),
    interference: length(read["heat.interferenceMm"], "mm"),
    clearance: length(read["heat.clearanceMm"], "mm"),
    room: temperature(read["heat.roomC"], "°C"),
    soakHours: read["heat.soakHours"],
    earlierSoaks: [],
  });
}

/** Load of the impeller as typed, against the slip target in lbf·ft; null while a number is missing or out of its range. */
export function loadFigures(fields: FormFields, targetLbfFt: number): LoadCheck | null {
  const read = readAll(LOAD_FIELDS, fields);
  if (read === null) return null;
  return loadCheck(
    {
      boost: pressure(read["load.boostPsi"], "psi"),
      inletPressure: pressure(ATMOSPHERE_KPA, "kPa"),
      inletTemperature: temperature(read["load.inletC"], "°C"),
      massFlowKgPerS: read["load.massFlowKgPerS"],
      efficiency: read["load.efficiency"],
      shaftRpm: read["load.shaftRpm"],
    },
    lbfft(targetLbfFt),
  );
}

function readAll<Name extends string>(
  wanted: readonly (FigureField & { readonly name: Name })[],
  fields: FormFields,
): Readonly<Record<Name, number>> | null {
  const read = wanted.map(({ name, least, most }) => {
    const value = readNumber(fields, name);
    return [name, value !== null && value >= least && value <= most ? value : null] as const;
  });
  return read.some(([, value]) => value === null) ? null : (Object.fromEntries(read) as Readonly<Record<Name, number>>);
}
