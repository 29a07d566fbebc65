import { ALLOY_FACTS, type ImpellerAlloy, type SoakLimit } from "#shared/slip/impeller-alloys.ts";

/** Time that an impeller spent hot. */
export type Soak = { readonly celsius: number; readonly hours: number };

/** What all the soaks of an impeller come to. */
export type SoakTally = {
  readonly hours: number;
  /** Hours hotter than the alloy's ceiling. */
  readonly hoursOverCeiling: number;
  readonly hottestC: number | null;
  /** Share used up of what was borne in trials, 1 = all of it; null where no trial of the alloy is known. */
  readonly shareUsed: number | null;
};

/**
 * Adds up the soaks of an impeller: hours at temperature add up and never go back. A share counts each soak at the next
 * hotter trial, hours over hours (shares simply add up: default of this project); hotter than every trial is `Infinity`.
 * @example soakTally("6061-T6", [{ celsius: 140, hours: 1 }, { celsius: 150, hours: 0.6 }]) // hours 1.6, shareUsed 0.025
 */
export function soakTally(alloy: ImpellerAlloy, soaks: readonly Soak[]): SoakTally {
  const { ceilingC, soakLimits } = ALLOY_FACTS[alloy];
  const sum = (of: (soak: Soak) => number) => soaks.reduce((total, soak) => total + of(soak), 0);
  return {
    hours: sum(({ hours }) => hours),
    hoursOverCeiling: sum(({ celsius, hours }) => (celsius > ceilingC ? hours : 0)),
    hottestC: soaks.length === 0 ? null : Math.max(...soaks.map(({ celsius }) => celsius)),
    shareUsed: soakLimits.length === 0 ? null : sum((soak) => shareOf(soakLimits, soak)),
  };
}

function shareOf(limits: readonly SoakLimit[], { celsius, hours }: Soak): number {
  const borne = limits.find((limit) => limit.celsius >= celsius)?.hours ?? 0;
  return hours === 0 ? 0 : hours / borne;
}
