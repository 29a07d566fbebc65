import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type FrictionFaces,
  frictionFromSlip,
  frictionOf,
  meanRadius,
  torqueCapacity,
} from "#shared/slip/friction-faces.ts";
import { force } from "#shared/units/force.ts";
import { lbfft, newtonMetres, torqueIn } from "#shared/units/torque.ts";

const relative = (one: number, other: number) => Math.abs(one / other - 1);
const ring = (outerMm: number, innerMm: number, faces: number): FrictionFaces => ({
  outerRadiusMm: outerMm / 2,
  innerRadiusMm: innerMm / 2,
  faces,
});
const newtons = (value: number) => force(value, "N");
const WEAR = "uniform-wear";
const PRESSURE = "uniform-pressure";

/** Clamp force that a highest pressure allows, the other half of the textbook examples. */
const clampAt = {
  [WEAR]: (pressure: number, { outerRadiusMm: outer, innerRadiusMm: inner }: FrictionFaces) =>
    2 * Math.PI * pressure * inner * (outer - inner),
  [PRESSURE]: (pressure: number, { outerRadiusMm: outer, innerRadiusMm: inner }: FrictionFaces) =>
    Math.PI * pressure * (outer ** 2 - inner ** 2),
};

describe("torqueCapacity", () => {
  // V. B. Bhandari, Design of Machine Elements, chapter 11; diameters in mm, N/mm², N·mm.
  it.each([
    ["11.1", WEAR, ring(200, 100, 1), 0.2, 1, 15_707.963, 235_619.449],
    ["11.2", PRESSURE, ring(200, 100, 1), 0.2, 1, 23_561.945, 366_519.143],
    ["11.3", WEAR, ring(250, 174.166181, 2), 0.25, 0.5, 10_373.29, 550_000],
    ["11.8", WEAR, ring(150, 75, 8), 0.1, 0.3, 2650.719, 119_282.346],
  ] as const)("agrees with Bhandari, example %s, by %s", (_, theory, faces, friction, pressure, clamp, torque) => {
    const force = clampAt[theory](pressure, faces);
    expect(relative(force, clamp)).toBeLessThan(1e-6);
    expect(relative(torqueCapacity(newtons(force), friction, faces, theory).value * 1000, torque)).toBeLessThan(1e-6);
  });

  it("agrees with Bhandari, example 11.6: a safety of 2.142 by wear and 2.164 by pressure over 250 N·m", () => {
    const faces = ring(250, 175, 2);
    expect(relative(torqueCapacity(newtons(9 * 800), 0.35, faces, WEAR).value / 250, 2.142)).toBeLessThan(1e-6);
    expect(relative(torqueCapacity(newtons(9 * 800), 0.35, faces, PRESSURE).value / 250, 2.164235)).toBeLessThan(1e-6);
    // Springs of 800 N at 5 mm: the slip is down to the demand once so much has worn off.
    const worn = 5 * (1 - 250 / torqueCapacity(newtons(9 * 800), 0.35, faces, WEAR).value);
    expect(relative(worn, 2.665733)).toBeLessThan(1e-6);
  });

  // R. S. Khurmi and J. K. Gupta, Theory of Machines, ch. 10, by example; radii in mm, N, N·m.
  it.each([
    ["10.23", WEAR, ring(300, 200, 2), 0.3, 3141.59, 235.619, 3e-4],
    ["10.28", WEAR, ring(250, 150, 4), 0.3, 2992.37, 359.084, 1e-3],
    ["10.29", WEAR, ring(240, 120, 4), 0.3, 1403.48, 151.576, 1e-3],
    ["10.27", WEAR, ring(220, 160, 2), 0.35, 570, 37.905, 1e-3],
  ] as const)("agrees with Khurmi and Gupta, example %s", (_, theory, faces, friction, clamp, torque, tolerance) => {
    expect(relative(torqueCapacity(newtons(clamp), friction, faces, theory).value, torque)).toBeLessThan(tolerance);
  });

  it("follows Khurmi and Gupta, example 10.30: clamp lost by wear, worn washers by uniform wear", () => {
    const faces = ring(240, 120, 4);
    const clamp = 151.576 / torqueCapacity(newtons(1), 0.3, faces, PRESSURE).value;
    expect(relative(clamp, 1353.36)).toBeLessThan(1e-3);
    // Six springs of 13 N/mm; eight faces, 1.25 mm off each.
    const left = clamp - 6 * 13 * 8 * 1.25;
    expect(relative(left, 573.36)).toBeLessThan(1e-3);
    expect(relative(torqueCapacity(newtons(left), 0.3, faces, WEAR).value, 61.923)).toBeLessThan(1e-3);
  });

  it("agrees with U. C. Jindal, Machine Design, example 22.5: 102.314 N·m at 1031.07 N", () => {
    expect(relative(torqueCapacity(newtons(1031.07), 0.25, ring(160, 100, 6), PRESSURE).value, 102.314)).toBeLessThan(
      1e-3,
    );
  });

  it("agrees with T. H. Wentzell, Machine Design, example 16.1: 378 in·lb", () => {
    const torque = torqueCapacity(newtons(120 * 4.4482216152605), 0.3, ring(2 * 12 * 25.4, 2 * 9 * 25.4, 1), WEAR);
    expect(relative(torqueIn("lbf.ft", torque) * 12, 378)).toBeLessThan(1e-3);
  });

  // One disc spring B 50 on a gear between washers of 80/50 mm; worked out apart from this code.
  it.each([
    [5897.9, 76.67, 78.03],
    [4762.1, 61.91, 63.01],
    [3490.8, 45.38, 46.19],
  ])("turns %d N into %d and %d N·m", (clamp, wear, pressure) => {
    expect(torqueCapacity(newtons(clamp), 0.2, ring(80, 50, 2), WEAR).value).toBeCloseTo(wear, 2);
    expect(Math.abs(torqueCapacity(newtons(clamp), 0.2, ring(80, 50, 2), PRESSURE).value - pressure)).toBeLessThan(
      0.011,
    );
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rings = fc
  .record({ outerRadiusMm: number(10, 100), hole: number(0.3, 0.95), faces: fc.integer({ min: 1, max: 8 }) })
  .map(({ outerRadiusMm, hole, faces }) => ({ outerRadiusMm, innerRadiusMm: hole * outerRadiusMm, faces }));

describe("meanRadius", () => {
  // Uniform pressure over uniform wear, worked out apart from this code.
  it.each([
    [0.4, 1.0612],
    [0.5, 1.037],
    [0.6, 1.0208],
    [0.7, 1.0104],
    [0.75, 1.0068],
    [0.8, 1.0041],
    [0.9, 1.0009],
  ])("differs by the theories as it should for a hole of %d", (hole, ratio) => {
    const faces = { outerRadiusMm: 1, innerRadiusMm: hole, faces: 1 };
    expect(meanRadius(faces, PRESSURE) / meanRadius(faces, WEAR)).toBeCloseTo(ratio, 4);
  });

  it("is never less by uniform pressure, and lies on the ring by both", () => {
    fc.assert(
      fc.property(rings, (faces) => {
        expect(meanRadius(faces, PRESSURE)).toBeGreaterThan(meanRadius(faces, WEAR));
        expect(meanRadius(faces, PRESSURE)).toBeLessThan(faces.outerRadiusMm);
        expect(meanRadius(faces, WEAR)).toBeGreaterThan(faces.innerRadiusMm);
      }),
    );
  });
});

describe("friction as a result", () => {
  it("is what the torque was made of, by either theory", () => {
    fc.assert(
      fc.property(rings, number(0.02, 0.6), number(10, 20_000), (faces, friction, clamp) => {
        const back = (theory: typeof WEAR | typeof PRESSURE) =>
          frictionFromSlip(torqueCapacity(newtons(clamp), friction, faces, theory), newtons(clamp), faces);
        expect(relative(back(WEAR).uniformWear, friction)).toBeLessThan(1e-12);
        expect(relative(back(PRESSURE).uniformPressure, friction)).toBeLessThan(1e-12);
      }),
    );
  });

  it("grows with the torque, and falls with clamp and faces", () => {
    fc.assert(
      fc.property(rings, number(1, 50), number(10, 20_000), (faces, slip, clamp) => {
        const of = (torque: number, clampN: number, ring: FrictionFaces) =>
          frictionFromSlip(newtonMetres(torque), newtons(clampN), ring).uniformWear;
        const here = of(slip, clamp, faces);
        expect(relative(of(2 * slip, clamp, faces), 2 * here)).toBeLessThan(1e-12);
        expect(relative(of(slip, 2 * clamp, faces), here / 2)).toBeLessThan(1e-12);
        expect(relative(of(slip, clamp, { ...faces, faces: 2 * faces.faces }), here / 2)).toBeLessThan(1e-12);
      }),
    );
  });

  it("of a slip per newton keeps its interval", () => {
    const faces = ring(80, 50, 2);
    const one = frictionFromSlip(lbfft(18), newtons(1800), faces).uniformWear;
    expect(frictionOf({ value: 0.01, low: 0.009, high: 0.011 }, faces)).toEqual({
      value: expect.closeTo(one, 12),
      low: expect.closeTo(0.9 * one, 12),
      high: expect.closeTo(1.1 * one, 12),
    });
  });
});
