import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { springsOf } from "#shared/slip/clutch-parts.ts";
import { nextShims, type ShimAdvice } from "#shared/slip/next-shims.ts";
import { stackForceBounds, stackTravel } from "#shared/slip/spring-stack.ts";
import { readAtShims, SHIM_STACK, slipAt } from "#tests/slip/true-clutch.ts";

const stack = springsOf(SHIM_STACK);
/** Taken up at 0.5 mm of shims; 13 lbf·ft with 1.4 mm. */
const UNIT = { contactMm: 0.5, slipPerNewton: 13 / stackForceBounds(stack, 0.9).loading };
const at = (shimsMm: number, error = 0) => readAtShims(shimsMm, UNIT, error);

const advised = (...ask: Parameters<typeof nextShims>): ShimAdvice => {
  const advice = nextShims(...ask);
  if (!advice.ok) throw new Error(`Refused: ${advice.refusal.reason}`);
  return advice.value;
};

describe("nextShims", () => {
  it("finds the shims on the curve, from readings without error", () => {
    const { shims, lbfFtPerStep } = advised(SHIM_STACK, [at(1.0), at(1.2)], 13, 0.95);
    expect(shims.value).toBeCloseTo(1.4, 2);
    expect(shims.low).toBeLessThan(1.39);
    expect(shims.high).toBeGreaterThan(1.41);
    expect(lbfFtPerStep).toBeCloseTo(slipAt(SHIM_STACK, UNIT, 1.425) - slipAt(SHIM_STACK, UNIT, 1.375), 2);
  });

  it("puts in whole steps, fewer rather than more, since over is not fine", () => {
    const between = advised(SHIM_STACK, [at(1.0), at(1.2)], slipAt(SHIM_STACK, UNIT, 1.38), 0.95);
    expect(between.changeMm).toBeCloseTo(0.15, 9);
    expect(between.useMm).toBeCloseTo(1.35, 9);
    const over = advised(SHIM_STACK, [at(1.2), at(1.5)], slipAt(SHIM_STACK, UNIT, 1.38), 0.95);
    expect(over.changeMm).toBeCloseTo(-0.15, 9);
    expect(over.useMm).toBeCloseTo(1.35, 9);
  });

  it("changes nothing where the shims that are in it are the nearest below", () => {
    const { changeMm, useMm } = advised(SHIM_STACK, [at(1.0), at(1.4)], slipAt(SHIM_STACK, UNIT, 1.42), 0.95);
    expect(changeMm).toBe(0);
    expect(useMm).toBe(1.4);
  });

  it("never asks for shims that would press the springs flat, nor for more than its own limit", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(number(0.15, 0.95), number(0.15, 0.95), number(-0.15, 0.15), number(-0.15, 0.15)),
        number(-1.5, 1.5),
        number(6, 20),
        ([one, other, oneError, otherError], offset, wanted) => {
          const unit = { ...UNIT, contactMm: 0.5 + offset * SHIM_STACK.contactSpreadMm };
          const place = (share: number) => unit.contactMm + share * stackTravel(stack);
          const readings = [
            readAtShims(place(one), unit, oneError),
            readAtShims(place(other), unit, otherError),
          ] as const;
          const advice = nextShims(SHIM_STACK, readings, wanted, 0.95);
          const limit = advice.ok ? advice.value.neverPastMm : advice.refusal.neverPastMm;
          if (limit !== null) expect(limit).toBeLessThan(unit.contactMm + stackTravel(stack));
          fc.pre(advice.ok);
          expect(advice.value.useMm).toBeLessThanOrEqual(advice.value.shims.value + 1e-6);
          expect(advice.value.shims.high).toBeLessThanOrEqual(limit! + 1e-9);
        },
      ),
    );
  });

  it("says why it has no advice", () => {
    expect(nextShims(SHIM_STACK, [at(1.2), at(1.2)], 13, 0.95)).toEqual({
      ok: false,
      refusal: { reason: "same-place", neverPastMm: null },
    });
    expect(nextShims(SHIM_STACK, [at(1.0), at(1.2)], 22, 0.95)).toMatchObject({ refusal: { reason: "out-of-reach" } });
  });
});
