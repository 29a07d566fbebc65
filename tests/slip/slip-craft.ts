import * as fc from "fast-check";
import { RIDING, UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import type { SlipCraft } from "#shared/slip/slip-rule.ts";
import { SLIP_DEFAULTS, type SlipSettings } from "#shared/slip/slip-settings.ts";

type Changes = Partial<Omit<SlipCraft, "mods">> & Partial<SlipCraft["mods"]>;

/** The dull case: a standard craft ridden gently, on the later kind of unit. */
export function aCraft({ unitFamily = "set-nut", riding = "easy", ...mods }: Changes = {}): SlipCraft {
  return { unitFamily, riding, mods: { engine: false, charger: false, boostPsi: null, ...mods } };
}

const YES_NO_UNSURE = [true, false, null];
export const BOOSTS = [null, 0, 10, 12.5, 13, 13.2, 13.5, 13.8, 16, 17.99, 18, 20, 60];

/** Every kind of craft there is, at boosts on each side of every edge. */
export const WHOLE_GRID: readonly SlipCraft[] = UNIT_FAMILIES.flatMap((unitFamily) =>
  RIDING.flatMap((riding) =>
    YES_NO_UNSURE.flatMap((engine) =>
      YES_NO_UNSURE.flatMap((charger) =>
        BOOSTS.map((boostPsi) => aCraft({ unitFamily, riding, engine, charger, boostPsi })),
      ),
    ),
  ),
);

const yesNoUnsure = fc.constantFrom(...YES_NO_UNSURE);
/** Any psi, and often one that lies half-way between two hundredths. */
export const boosts = fc.oneof(
  fc.double({ min: 0, max: 60, noNaN: true }),
  fc.integer({ min: 0, max: 5999 }).map((hundredth) => (hundredth * 10 + 5) / 1000),
);

export const crafts: fc.Arbitrary<SlipCraft> = fc.record({
  unitFamily: fc.constantFrom(...UNIT_FAMILIES),
  riding: fc.constantFrom(...RIDING),
  mods: fc.record({ engine: yesNoUnsure, charger: yesNoUnsure, boostPsi: fc.option(boosts) }),
});

const hundredths = (from: number, to: number) =>
  fc.integer({ min: from * 100, max: to * 100 }).map((value) => value / 100);

/** Any settings a shop may have saved: ranges the right way round, ceilings above them. */
export const settings: fc.Arbitrary<SlipSettings> = fc
  .record({
    gentle: fc.tuple(hundredths(8, 11), hundredths(12, 14)),
    hard: fc.tuple(hundredths(9, 12), hundredths(13, 15)),
    mixedTarget: hundredths(10, 15),
    bandUnder: hundredths(0, 2),
    bandOver: hundredths(0, 2),
    ceilings: fc.tuple(hundredths(15, 30), hundredths(15, 30), hundredths(15, 30)),
    lockNutRise: hundredths(0, 4),
  })
  .map(({ gentle, hard, ceilings, ...rest }) => ({
    ...SLIP_DEFAULTS,
    ...rest,
    gentleLow: gentle[0],
    gentleHigh: gentle[1],
    hardLow: hard[0],
    hardHigh: hard[1],
    ceilingSetNut: ceilings[0],
    ceilingShimStack: ceilings[1],
    ceilingUnknown: ceilings[2],
  }));
