import * as fc from "fast-check";
import type { SetNutClutch, ShimStackClutch } from "#shared/slip/clutch-data.ts";
import { springsOf } from "#shared/slip/clutch-parts.ts";
import { CLUTCH_DEFAULTS } from "#shared/slip/clutch-settings.ts";
import type { SlipAtNut } from "#shared/slip/next-nut.ts";
import type { SlipAtShims } from "#shared/slip/next-shims.ts";
import { stackForceBounds, stackTravel } from "#shared/slip/spring-stack.ts";

export const SET_NUT: SetNutClutch = CLUTCH_DEFAULTS.setNut;
export const SHIM_STACK: ShimStackClutch = CLUTCH_DEFAULTS.shimStack;

/** What a unit really is, and no bench can see: where its springs are taken up, and its slip over its clamp force. */
export type TrueUnit = { readonly contactMm: number; readonly slipPerNewton: number };

/** The dull case: taken up at zero, 16.5 lbf·ft at a full turn of the default set nut. */
export const aUnit = (changes: Partial<TrueUnit> = {}): TrueUnit => ({
  contactMm: 0,
  slipPerNewton: 16.5 / stackForceBounds(springsOf(SET_NUT), 1).loading,
  ...changes,
});

/** Its slip with the springs pressed to a place by tightening, lbf·ft. */
export const slipAt = (clutch: SetNutClutch | ShimStackClutch, unit: TrueUnit, travelMm: number): number =>
  unit.slipPerNewton * stackForceBounds(springsOf(clutch), Math.max(0, travelMm - unit.contactMm)).loading;

export const readAtNut = (
  nutDegrees: number,
  {
    clutch = SET_NUT,
    unit = aUnit(),
    error = 0,
    uncertainty = 0.1,
  }: {
    readonly clutch?: SetNutClutch;
    readonly unit?: TrueUnit;
    readonly error?: number;
    readonly uncertainty?: number;
  } = {},
): SlipAtNut => ({
  nutDegrees,
  slipLbfFt: slipAt(clutch, unit, (nutDegrees / 360) * clutch.threadPitchMm) + error,
  uncertaintyLbfFt: uncertainty,
  reached: "tightening",
});

export const readAtShims = (shimsMm: number, unit: TrueUnit, error = 0): SlipAtShims => ({
  shimsMm,
  slipLbfFt: slipAt(SHIM_STACK, unit, shimsMm) + error,
  uncertaintyLbfFt: 0.1,
});

/** Degrees at which the springs of a unit are flat, and its gear locks. */
export const homeOf = (clutch: SetNutClutch, unit: TrueUnit): number =>
  ((unit.contactMm + stackTravel(springsOf(clutch))) / clutch.threadPitchMm) * 360;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Set-nut clutches from stiff to nearly flat, that reach a slip of the trade somewhere on their way. */
export const setNutClutches: fc.Arbitrary<SetNutClutch> = fc
  .record({
    ratio: number(0.35, 1.25),
    springsNested: fc.integer({ min: 1, max: 3 }),
    springPackets: fc.integer({ min: 1, max: 4 }),
    threadPitchMm: number(0.75, 1.5),
    layerFriction: number(0, 0.02),
    edgeFriction: number(0.01, 0.04),
    contactSpreadDegrees: number(3, 30),
    mostTravelShare: number(0.5, 0.95),
  })
  .map(({ ratio, ...rest }) => ({ ...SET_NUT, ...rest, springFreeHeightMm: SET_NUT.springThicknessMm * (1 + ratio) }));

/** Two places on the way, a unit that is off zero by no more than is usual, and readings with their own errors. */
export const benches = fc
  .record({
    clutch: setNutClutches,
    offset: number(-1.5, 1.5),
    fullSlip: number(8, 25),
    places: fc.tuple(number(0.2, 0.85), number(0.2, 0.85)),
    errors: fc.tuple(number(-1.5, 1.5), number(-1.5, 1.5)),
    uncertainty: number(0.03, 0.2),
  })
  .map(({ clutch, offset, fullSlip, places, errors, uncertainty }) => {
    const stack = springsOf(clutch);
    const travel = stackTravel(stack);
    const unit: TrueUnit = {
      contactMm: ((offset * clutch.contactSpreadDegrees) / 360) * clutch.threadPitchMm,
      slipPerNewton: fullSlip / stackForceBounds(stack, travel).loading,
    };
    const read = (place: number, error: number) =>
      readAtNut(((unit.contactMm + place * travel) / clutch.threadPitchMm) * 360, {
        clutch,
        unit,
        uncertainty,
        error: error * uncertainty,
      });
    return { clutch, unit, readings: [read(places[0], errors[0]), read(places[1], errors[1])] as const };
  });
