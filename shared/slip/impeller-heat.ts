import { ALLOY_FACTS, type ImpellerAlloy, STEEL_EXPANSION_PER_K } from "#shared/slip/impeller-alloys.ts";
import { type Soak, type SoakTally, soakTally } from "#shared/slip/soak-tally.ts";
import { type Length, lengthIn } from "#shared/units/length.ts";
import { type Temperature, temperature, temperatureIn } from "#shared/units/temperature.ts";

/** An impeller that is to slide on or off its shaft. */
export type ImpellerFit = {
  readonly alloy: ImpellerAlloy;
  readonly shaft: Length;
  /** How much larger the shaft is than the bore, on the diameter, at room temperature; negative where it is loose. */
  readonly interference: Length;
  /** Room wanted on the diameter while it slides. */
  readonly clearance: Length;
  readonly room: Temperature;
  /** Hours that it will be hot this time, and every time that it was hot before. */
  readonly soakHours: number;
  readonly earlierSoaks: readonly Soak[];
};

/** How hot to make it. */
export type ImpellerHeat = {
  readonly reach: "slides-cold" | "heat" | "over-ceiling";
  /** Temperature to reach; null where none is needed, or where the alloy may not be made so hot. */
  readonly heatTo: Temperature<"°C"> | null;
  readonly ceiling: Temperature<"°C">;
  /** Kelvins over the room that the impeller alone needs, and that both would need were the steel shaft to warm with it. */
  readonly riseK: number;
  readonly riseWithShaftK: number;
  /** Room on the diameter that the ceiling gives; negative where it would still be tight. */
  readonly clearanceAtCeilingMm: number;
  /** All soaks with this one. */
  readonly soaks: SoakTally;
  readonly cautions: readonly string[];
};

/**
 * Temperature at which an impeller slides: rise = (interference + clearance)/(α·d), impeller heated and shaft left at
 * room temperature; with both warm α is the difference of the two. J. E. Shigley, as in his Mechanical Engineering
 * Design, 10th ed., 3-16, and DIN 7190-1:2017 (both from memory). Never a temperature over the alloy's ceiling.
 * @example impellerHeat({ alloy: "2618-T61", shaft: length(30, "mm"), interference: length(0.03, "mm"),
 *   clearance: length(0.03, "mm"), room: temperature(20, "°C"), soakHours: 0.5, earlierSoaks: [] }).heatTo // 109.7 °C, a rise of 89.7 K
 */
export function impellerHeat(fit: ImpellerFit): ImpellerHeat {
  const { expansionPerK, ceilingC } = ALLOY_FACTS[fit.alloy];
  const roomC = temperatureIn("°C", fit.room);
  const shaftMm = lengthIn("mm", fit.shaft);
  const interferenceMm = lengthIn("mm", fit.interference);
  const wantedMm = Math.max(0, interferenceMm + lengthIn("mm", fit.clearance));
  const riseK = riseToGrow(wantedMm, shaftMm, expansionPerK);
  const heatToC = roomC + riseK;
  const reach = riseK === 0 ? "slides-cold" : heatToC <= ceilingC ? "heat" : "over-ceiling";
  const thisSoak = reach === "heat" ? [{ celsius: heatToC, hours: fit.soakHours }] : [];
  const soaks = soakTally(fit.alloy, [...fit.earlierSoaks, ...thisSoak]);
  return {
    reach,
    heatTo: reach === "heat" ? temperature(heatToC, "°C") : null,
    ceiling: temperature(ceilingC, "°C"),
    riseK,
    riseWithShaftK: riseToGrow(wantedMm, shaftMm, expansionPerK - STEEL_EXPANSION_PER_K),
    clearanceAtCeilingMm: (ceilingC - roomC) * expansionPerK * shaftMm - interferenceMm,
    soaks,
    cautions: cautionsOf(reach, fit.alloy, soaks),
  };
}

/**
 * Rise in K at which a ring of so many mm grows by so much: the same sources.
 * @example riseToGrow(0.06, 30, 22.3e-6) // 89.69
 */
export const riseToGrow = (growthMm: number, diameterMm: number, expansionPerK: number): number =>
  growthMm / (expansionPerK * diameterMm);

const WHEN_HEATED = [
  "Heat the impeller alone, evenly, in an oven or on a plate; a shaft that warms with it grows too.",
  "Measure the temperature on the impeller. A torch has no temperature: never use one.",
  "No heat near petrol vapour. Wear gloves for hot parts, and let the unit cool before it is handled.",
  "Keep ball bearings under 120 °C (common practice, no published source). If the impeller does not slide, heat again; do not force it.",
  "Write the soak down: hours at temperature add up over the life of an impeller.",
];

function cautionsOf(reach: ImpellerHeat["reach"], alloy: ImpellerAlloy, soaks: SoakTally): readonly string[] {
  const cautions = reach === "heat" ? [...WHEN_HEATED] : [];
  if (reach === "over-ceiling") {
    cautions.push(
      "The alloy may not be made so hot: it would stay weaker. Ask for less room, or measure the fit again.",
    );
  }
  if (alloy === "unknown") cautions.push("The alloy is not known, so it is taken for the one that bears least heat.");
  if (soaks.hoursOverCeiling > 0) {
    cautions.push("This impeller has been hotter than its alloy bears. Have its hardness tested before it runs again.");
  }
  if (soaks.shareUsed !== null && soaks.shareUsed > 1) {
    cautions.push("Its soaks add up to more than the alloy was seen to bear. Replace the impeller.");
  }
  return cautions;
}
