import { sourceText } from "#shared/basics/source.ts";
import type { HEAT_FIELDS, LOAD_FIELDS } from "#shared/job/bench-figures.ts";
import type { WearSince } from "#shared/job/wear-since.ts";
import { ALLOY_FACTS, type ImpellerAlloy } from "#shared/slip/impeller-alloys.ts";
import type { ImpellerHeat } from "#shared/slip/impeller-heat.ts";
import type { LoadCheck } from "#shared/slip/load-check.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** Words of the calculators on the bench sheet. */
export const FIGURES = {
  heatTitle: "How hot for the impeller?",
  loadTitle: "Load check (planning figure, not a bench value)",
  loadSays: "What steady running asks of the shaft. Flow and efficiency are guesses without a flow bench.",
  alloy: "Alloy and temper",
  workOut: "Work it out",
  fillIn: "Fill in every number.",
  range: (least: number, most: number) => `${least} to ${most}`,
} as const;

export const FIGURE_LABELS: Readonly<Record<(typeof HEAT_FIELDS | typeof LOAD_FIELDS)[number]["name"], string>> = {
  "heat.shaftMm": "Shaft, mm",
  "heat.interferenceMm": "Shaft larger than bore by, mm",
  "heat.clearanceMm": "Room wanted to slide, mm",
  "heat.roomC": "Workshop, °C",
  "heat.soakHours": "Hours hot",
  "load.boostPsi": "Peak boost, psi",
  "load.massFlowKgPerS": "Air flow, kg/s",
  "load.efficiency": "Efficiency, 0.1 to 1",
  "load.shaftRpm": "Charger shaft, turns a minute",
  "load.inletC": "Air at the inlet, °C",
};

export const ALLOY_WORDS: Readonly<Record<ImpellerAlloy, string>> = {
  unknown: "Not known",
  "2618-T61": "2618-T61",
  "6061-T6": "6061-T6",
  "7075-T6": "7075-T6",
};

/** A line each; one that asks for the numbers while some are missing. */
export function heatLines(heat: ImpellerHeat | null, alloy: ImpellerAlloy): readonly string[] {
  if (heat === null) return [FIGURES.fillIn];
  const ceiling = `Never over ${whole(heat.ceiling.value)} °C (${sourceText(ALLOY_FACTS[alloy].ceilingSource)}).`;
  return [REACH[heat.reach](heat), ceiling, ...soakLine(heat), ...heat.cautions];
}

const REACH: Readonly<Record<ImpellerHeat["reach"], (heat: ImpellerHeat) => string>> = {
  "slides-cold": () => "It slides without heat.",
  heat: ({ heatTo, riseWithShaftK, riseK }) =>
    `Heat the impeller alone to ${whole(heatTo?.value ?? 0)} °C, ${whole(riseK)} over the workshop. ` +
    `Were the shaft to warm with it, ${whole(riseWithShaftK)} would be needed.`,
  "over-ceiling": ({ clearanceAtCeilingMm }) =>
    `It cannot be made hot enough. At its ceiling there is ${roundTo(clearanceAtCeilingMm, 3)} mm of room.`,
};

function soakLine({ soaks: { hours, shareUsed } }: ImpellerHeat): readonly string[] {
  if (hours === 0) return [];
  const share = shareUsed === null ? "" : `, ${roundTo(shareUsed * 100, 1)} % of what the alloy was seen to bear`;
  return [`This soak: ${roundTo(hours, 2)} h${share}. Earlier soaks add to it.`];
}

/** The load in words, the label always with it. */
export function loadLines(load: LoadCheck | null): readonly string[] {
  if (load === null) return [FIGURES.fillIn];
  return [
    `${load.label[0]?.toUpperCase() ?? ""}${load.label.slice(1)}.`,
    `The impeller asks for about ${roundTo(load.impellerTorque.value, 1)} lbf·ft and ${roundTo(load.shaftPower.value, 1)} kW.`,
    `The slip target is ${roundTo(load.margin, 1)} times that. Speed changes ask for more on top.`,
  ];
}

/** What the clutch lost since its last service here; null where there was none. */
export function wearText(wear: WearSince): string | null {
  switch (wear.is) {
    case "no-service":
      return null;
    case "no-hours":
      return "Wear since the last service here: not known without the engine hours then and now.";
    case "no-target":
      return "Wear since the last service here: not worked out without a target.";
    case "too-few-readings":
      return "Read the slip as found three times to see the wear since the last service here.";
    case "known":
      return knownWear(wear);
  }
}

function knownWear({ hours, trend }: Extract<WearSince, { is: "known" }>): string {
  const lost = trend.lostPerTenHours;
  if (lost === null) return "Wear since the last service here: not known.";
  const rate = `${two(lost.value)} lbf·ft in 10 hours (${two(lost.low)} to ${two(lost.high)})`;
  const left = trend.hoursToLimit;
  const rest =
    left === null
      ? "So it does not tell when the lower limit is reached."
      : `At that rate, as found, the lower limit is reached in ${whole(left.value)} hours.`;
  return `Since the last service here, over ${whole(hours)} hours, it lost ${rate}. ${rest}`;
}

const whole = (value: number): string => String(roundTo(value, 0));
const two = (value: number): string => String(roundTo(value, 2));
