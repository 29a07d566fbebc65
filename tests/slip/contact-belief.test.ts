import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { springsOf } from "#shared/slip/clutch-parts.ts";
import { contactBelief, type SlipAtTravel } from "#shared/slip/contact-belief.ts";
import { type SpringStack, stackForceBounds, stackTravel } from "#shared/slip/spring-stack.ts";
import { SET_NUT } from "#tests/slip/true-clutch.ts";

const stack = springsOf(SET_NUT);
const CONTACT = { atMm: 0, spreadMm: 0.05 };
const SCALE = 16.5 / stackForceBounds(stack, 1).loading;

const read = (travelMm: number, contactMm: number, error: number): SlipAtTravel => ({
  travelMm,
  slipLbfFt: SCALE * stackForceBounds(stack, travelMm - contactMm).loading + error,
  uncertaintyLbfFt: 0.1,
  reached: "tightening",
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pairs = fc
  .tuple(number(-0.08, 0.08), number(0.3, 0.6), number(0.7, 1.1), number(-0.15, 0.15), number(-0.15, 0.15))
  .map(
    ([contactMm, one, other, first, second]) => [read(one, contactMm, first), read(other, contactMm, second)] as const,
  );

/** Means of the contact and of the slip per newton, summed over a plane of both instead of along the best line. */
function byPlane(springs: SpringStack, readings: readonly SlipAtTravel[]) {
  let [sum, contact, scale] = [0, 0, 0];
  for (let row = 0; row < 160; row += 1) {
    const contactMm = CONTACT.atMm + (row / 80 - 1) * 4 * CONTACT.spreadMm;
    for (let column = 0; column < 400; column += 1) {
      const slipPerNewton = SCALE * Math.exp((column / 200 - 1) * 0.5);
      const off = readings.reduce(
        (total, it) => {
          const expected = slipPerNewton * stackForceBounds(springs, it.travelMm - contactMm).loading;
          return total + ((it.slipLbfFt - expected) / it.uncertaintyLbfFt) ** 2;
        },
        ((contactMm - CONTACT.atMm) / CONTACT.spreadMm) ** 2,
      );
      const weight = Math.exp(-off / 2);
      sum += weight;
      contact += weight * contactMm;
      scale += weight * slipPerNewton;
    }
  }
  return { contactMm: contact / sum, slipPerNewton: scale / sum };
}

describe("contactBelief", () => {
  it("agrees with a sum over the whole plane of contact and slip per newton", () => {
    fc.assert(
      fc.property(pairs, (readings) => {
        const belief = contactBelief(stack, CONTACT, readings);
        fc.pre(belief.length > 0);
        const mean = (of: (guess: (typeof belief)[number]) => number) =>
          belief.reduce((sum, guess) => sum + guess.weight * of(guess), 0);
        const plane = byPlane(stack, readings);
        expect(Math.abs(mean((it) => it.contactMm) - plane.contactMm)).toBeLessThan(0.003);
        expect(Math.abs(mean((it) => it.slipPerNewton) / plane.slipPerNewton - 1)).toBeLessThan(0.005);
      }),
      { numRuns: 15 },
    );
  });

  it("adds up to one, in rising order, with both readings on the springs' way", () => {
    fc.assert(
      fc.property(pairs, (readings) => {
        const belief = contactBelief(stack, CONTACT, readings);
        fc.pre(belief.length > 0);
        expect(belief.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
        const contacts = belief.map(({ contactMm }) => contactMm);
        expect(contacts).toEqual(contacts.toSorted((one, other) => one - other));
        for (const contactMm of contacts) {
          expect(contactMm).toBeLessThan(Math.min(...readings.map(({ travelMm }) => travelMm)));
          expect(contactMm).toBeGreaterThan(Math.max(...readings.map(({ travelMm }) => travelMm)) - stackTravel(stack));
        }
      }),
    );
  });

  it("keeps to what was known beforehand where the readings say little", () => {
    const belief = contactBelief(stack, CONTACT, [
      { ...read(0.6, 0, 0), uncertaintyLbfFt: 50 },
      { ...read(0.9, 0, 0), uncertaintyLbfFt: 50 },
    ]);
    const mean = belief.reduce((sum, it) => sum + it.weight * it.contactMm, 0);
    const variance = belief.reduce((sum, it) => sum + it.weight * (it.contactMm - mean) ** 2, 0);
    expect(mean).toBeCloseTo(0, 4);
    expect(Math.sqrt(variance)).toBeCloseTo(0.05, 3);
  });

  it("is empty where readings and springs contradict each other", () => {
    expect(contactBelief(stack, CONTACT, [read(0.5, 0, 3), read(0.9, 0, -4)])).toEqual([]);
    expect(contactBelief(stack, CONTACT, [read(0.2, 0, 0), { ...read(0.3, 0, 0), travelMm: 1.9 }])).toEqual([]);
  });
});
