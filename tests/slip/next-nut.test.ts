import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { springsOf } from "#shared/slip/clutch-parts.ts";
import { type NoNutAdvice, type NutAdvice, nextNut } from "#shared/slip/next-nut.ts";
import { stackForceBounds, stackTravel } from "#shared/slip/spring-stack.ts";
import { aUnit, benches, homeOf, readAtNut, SET_NUT, slipAt } from "#tests/slip/true-clutch.ts";

const advised = (...ask: Parameters<typeof nextNut>): NutAdvice => {
  const advice = nextNut(...ask);
  if (!advice.ok) throw new Error(`Refused: ${advice.refusal.reason}`);
  return advice.value;
};
const refused = (...ask: Parameters<typeof nextNut>): NoNutAdvice => {
  const advice = nextNut(...ask);
  if (advice.ok) throw new Error(`Advised ${advice.value.turnTo.value}`);
  return advice.refusal;
};

const target = fc.double({ min: 8, max: 22, noNaN: true });

describe("nextNut", () => {
  it("finds the place on the curve, from readings without error", () => {
    // The unit slips at 16.5 lbf·ft after a full turn.
    const { turnTo, lbfFtPer10Degrees, friction } = advised(SET_NUT, [readAtNut(180), readAtNut(270)], 16.5, 0.95);
    expect(turnTo.value).toBeCloseTo(360, 0);
    expect(turnTo.low).toBeLessThan(357);
    expect(turnTo.high).toBeGreaterThan(363);
    const slope = slipAt(SET_NUT, aUnit(), 1.01) - slipAt(SET_NUT, aUnit(), 0.99);
    expect(lbfFtPer10Degrees).toBeCloseTo((slope / 0.02) * (10 / 360), 2);
    // 16.5 lbf·ft is 22.371 N·m, at a mean radius of 19.5 mm on two faces
    const clamp = stackForceBounds(springsOf(SET_NUT), 1).loading;
    expect(friction.value).toBeCloseTo(22.371 / (2 * clamp * 0.0195), 3);
  });

  it("finds it again where zero was missed and the friction is another, the more surely the further apart the readings", () => {
    const unit = aUnit({ contactMm: 0.06, slipPerNewton: 1.3 * aUnit().slipPerNewton });
    const at = (degrees: number) => readAtNut(degrees, { unit, uncertainty: 0.05 });
    const far = advised(SET_NUT, [at(120), at(300)], 18, 0.95);
    const near = advised(SET_NUT, [at(120), at(150)], 18, 0.95);
    expect(Math.abs(slipAt(SET_NUT, unit, far.turnTo.value / 360) - 18)).toBeLessThan(0.3);
    expect(far.turnTo.high - far.turnTo.low).toBeLessThan((near.turnTo.high - near.turnTo.low) / 2);
  });

  it("stops on the way up where the slip may be on target already, and comes to a place behind from further behind", () => {
    const up = advised(SET_NUT, [readAtNut(180), readAtNut(270)], 16.5, 0.95);
    expect(up.backOffToDegrees).toBeNull();
    expect(up.firstStopDegrees).toBe(up.turnTo.low);
    const down = advised(SET_NUT, [readAtNut(300), readAtNut(380)], 16.5, 0.95);
    expect(down.turnTo.value).toBeCloseTo(360, 0);
    expect(down.firstStopDegrees).toBe(down.turnTo.low);
    expect(down.backOffToDegrees).toBeCloseTo(down.turnTo.low - 90, 9);
  });

  it("always moves on: near the target it stops half-way", () => {
    const { turnTo, firstStopDegrees } = advised(SET_NUT, [readAtNut(330), readAtNut(358)], 16.5, 0.95);
    expect(turnTo.low).toBeLessThan(358);
    expect(firstStopDegrees).toBeCloseTo((358 + turnTo.value) / 2, 9);
  });

  it("says where the target is out of reach, and still where never to turn past", () => {
    const { reason, neverPastDegrees } = refused(SET_NUT, [readAtNut(180), readAtNut(270)], 20, 0.95);
    expect(reason).toBe("out-of-reach");
    expect(neverPastDegrees).toBeLessThan(0.9 * homeOf(SET_NUT, aUnit()));
  });

  it("has nothing to say from one place, or from readings that contradict the springs", () => {
    expect(refused(SET_NUT, [readAtNut(180), readAtNut(180)], 16.5, 0.95).reason).toBe("same-place");
    const falling = [readAtNut(180), { ...readAtNut(270), slipLbfFt: 6 }] as const;
    expect(refused(SET_NUT, falling, 16.5, 0.95)).toEqual({ reason: "does-not-fit", neverPastDegrees: null });
    // Further apart than the springs can be pressed at all.
    expect(refused(SET_NUT, [readAtNut(20), readAtNut(620)], 16.5, 0.95).reason).toBe("does-not-fit");
    // Before the springs are taken up at all.
    expect(refused(SET_NUT, [readAtNut(-90), readAtNut(90)], 16.5, 0.95).reason).toBe("does-not-fit");
  });

  it("gives no advice on a flat curve, or past its top", () => {
    // Height over thickness 1.3: the rate near flat is 6 % of the first one. 1.7: the load falls from about 3/4 of the way.
    const clutch = (ratio: number) => ({ ...SET_NUT, springThicknessMm: 1, springFreeHeightMm: 1 + ratio });
    const at = (ratio: number, share: number) => {
      const flat = clutch(ratio);
      const travel = stackTravel(springsOf(flat));
      const unit = { contactMm: 0, slipPerNewton: 18 / stackForceBounds(springsOf(flat), 0.6 * travel).loading };
      return readAtNut(share * travel * 360, { clutch: flat, unit, uncertainty: 0.05 });
    };
    expect(refused(clutch(1.3), [at(1.3, 0.7), at(1.3, 0.88)], 18.5, 0.95).reason).toBe("flat");
    expect(refused(clutch(1.3), [at(1.3, 0.3), at(1.3, 0.5)], 20, 0.95).reason).toBe("flat");
    expect(refused(clutch(1.7), [at(1.7, 0.8), at(1.7, 0.95)], 17, 0.95).reason).toBe("past-top");
    // On its steep part the same clutch is advised on.
    expect(nextNut(clutch(1.7), [at(1.7, 0.15), at(1.7, 0.25)], 14, 0.95).ok).toBe(true);
  });

  it("takes a reading that was come to by loosening as less sure, and as more slip than it says", () => {
    const loosened = { ...readAtNut(270), reached: "loosening" } as const;
    const plain = advised(SET_NUT, [readAtNut(180), readAtNut(270)], 16.5, 0.95);
    const wary = advised(SET_NUT, [readAtNut(180), loosened], 16.5, 0.95);
    expect(wary.turnTo.value).toBeLessThan(plain.turnTo.value);
    expect(wary.turnTo.high - wary.turnTo.low).toBeGreaterThan(plain.turnTo.high - plain.turnTo.low);
  });

  it("never advises home, nor any angle in its interval, on any unit", () => {
    fc.assert(
      fc.property(benches, target, ({ clutch, unit, readings }, wanted) => {
        const advice = nextNut(clutch, readings, wanted, 0.95);
        const limit = advice.ok ? advice.value.neverPastDegrees : advice.refusal.neverPastDegrees;
        if (limit !== null) expect(limit).toBeLessThan(homeOf(clutch, unit));
        fc.pre(advice.ok);
        const { turnTo, firstStopDegrees } = advice.value;
        expect(turnTo.high).toBeLessThanOrEqual(limit! + 1e-9);
        expect(turnTo.value).toBeLessThanOrEqual(turnTo.high);
        expect(turnTo.low).toBeLessThanOrEqual(turnTo.value);
        expect(firstStopDegrees).toBeLessThanOrEqual(turnTo.value);
      }),
    );
  });

  it("keeps the true place in its interval, wherever the readings err by no more than is usual", () => {
    let [held, tried] = [0, 0];
    fc.assert(
      fc.property(benches, target, ({ clutch, unit, readings }, wanted) => {
        const advice = nextNut(clutch, readings, wanted, 0.99);
        fc.pre(advice.ok);
        const { low, high } = advice.value.turnTo;
        const slip = (degrees: number) => slipAt(clutch, unit, (degrees / 360) * clutch.threadPitchMm);
        tried += 1;
        if (slip(low) <= wanted && (slip(high) >= wanted || high > advice.value.neverPastDegrees - 1e-6)) held += 1;
      }),
      { numRuns: 300 },
    );
    // Errors are drawn evenly up to 1.5 standard deviations, so 99 % should hold nearly always.
    expect(held / tried).toBeGreaterThan(0.97);
  });

  it("asks for no less nut where more slip is wanted", () => {
    fc.assert(
      fc.property(benches, target, fc.double({ min: 0, max: 4, noNaN: true }), ({ clutch, readings }, wanted, more) => {
        const [one, other] = [nextNut(clutch, readings, wanted, 0.95), nextNut(clutch, readings, wanted + more, 0.95)];
        fc.pre(one.ok && other.ok);
        expect(other.value.turnTo.value).toBeGreaterThanOrEqual(one.value.turnTo.value - 1e-6);
      }),
    );
  });

  it("is wider the surer it is asked to be, and the less sure the readings are", () => {
    fc.assert(
      fc.property(benches, target, ({ clutch, readings }, wanted) => {
        const width = (coverage: number, factor: number) => {
          const less = readings.map((it) => ({ ...it, uncertaintyLbfFt: it.uncertaintyLbfFt * factor }));
          const advice = nextNut(clutch, [less[0]!, less[1]!], wanted, coverage);
          fc.pre(advice.ok);
          const { low, high } = advice.value.turnTo;
          // Where the limit cuts it off, its upper side says nothing.
          fc.pre(high < advice.value.neverPastDegrees - 1);
          return high - low;
        };
        expect(width(0.95, 1)).toBeGreaterThanOrEqual(width(0.8, 1));
        expect(width(0.8, 2)).toBeGreaterThan(0.9 * width(0.8, 1));
      }),
    );
  });

  it("gives friction as a result: it scales with the slip and moves no angle", () => {
    fc.assert(
      fc.property(benches, target, fc.double({ min: 0.5, max: 2, noNaN: true }), ({ clutch, readings }, wanted, by) => {
        const scaled = readings.map((it) => ({
          ...it,
          slipLbfFt: it.slipLbfFt * by,
          uncertaintyLbfFt: it.uncertaintyLbfFt * by,
        }));
        const [one, other] = [
          nextNut(clutch, readings, wanted, 0.95),
          nextNut(clutch, [scaled[0]!, scaled[1]!], wanted * by, 0.95),
        ];
        expect(other.ok).toBe(one.ok);
        fc.pre(one.ok && other.ok);
        expect(other.value.turnTo.value).toBeCloseTo(one.value.turnTo.value, 3);
        expect(other.value.friction.value / one.value.friction.value).toBeCloseTo(by, 6);
      }),
    );
  });
});
