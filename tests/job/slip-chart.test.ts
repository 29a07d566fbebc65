import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { slipChart } from "#shared/job/slip-chart.ts";
import { type SlipHistory, slipHistory, type UnitService } from "#shared/job/slip-history.ts";
import { aGentleSheet, aService } from "#tests/job/a-service.ts";
import { DIGITAL } from "#tests/job/a-sheet.ts";
import { aCraft } from "#tests/support/a-craft.ts";

const slips = fc.option(
  fc.record({
    lbfFt: fc.double({ min: 1, max: 40, noNaN: true }),
    expanded: fc.option(fc.double({ min: 0, max: 3, noNaN: true })),
  }),
);
const services: fc.Arbitrary<readonly UnitService[]> = fc
  .array(
    fc.record({
      job: fc.constant("16JD"),
      code: fc.constant(""),
      date: fc.constant("2027-05-01"),
      engineHours: fc.option(fc.integer({ min: 0, max: 20_000 })),
      work: fc.constant("slip-check" as const),
      found: slips,
      left: slips,
      band: fc.option(fc.constant({ low: 12, high: 13 })),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((all) => all.toSorted((one, other) => (one.engineHours ?? 0) - (other.engineHours ?? 0)));

describe("the drawing of a unit's slip", () => {
  it("lies within its frame, whatever was measured, with hours to the right and slip upwards", () => {
    fc.assert(
      fc.property(services, fc.option(fc.integer({ min: 0, max: 20_000 })), (all, due) => {
        const chart = slipChart({ services: all, trend: null }, due);
        const drawn = all.filter((it) => it.engineHours !== null && (it.found ?? it.left) !== null);
        if (chart === null) {
          expect(drawn).toEqual([]);
          return;
        }
        const { plot, points, slips: ticks, hours } = chart;
        expect(points.length).toBe(
          drawn.flatMap(({ found, left }) => [found, left].filter((it) => it !== null)).length,
        );
        for (const { x, y, bar } of points) {
          expect(x).toBeGreaterThanOrEqual(plot.x1 - 4);
          expect(x).toBeLessThanOrEqual(plot.x2 + 4);
          for (const at of [y, bar?.top ?? y, bar?.bottom ?? y]) {
            expect(at).toBeGreaterThanOrEqual(plot.y1);
            expect(at).toBeLessThanOrEqual(plot.y2);
          }
          if (bar !== null) expect(bar.top).toBeLessThanOrEqual(bar.bottom);
        }
        for (const [axis, sign] of [
          [hours, 1],
          [ticks, -1],
        ] as const) {
          expect(axis.length).toBeGreaterThan(1);
          expect(axis.length).toBeLessThan(12);
          for (const [index, tick] of axis.slice(1).entries()) {
            expect(tick.value).toBeGreaterThan(axis[index]!.value);
            expect(sign * (tick.at - axis[index]!.at)).toBeGreaterThan(0);
          }
        }
      }),
    );
  });

  it("is to scale", () => {
    const chart = slipChart({ services: [aUnitService(0, 10, 12), aUnitService(100, 11, 14)], trend: null }, 200)!;
    const found = chart.points.filter(({ is }) => is === "found");
    const left = chart.points.filter(({ is }) => is === "left");
    const perHour = (found[1]!.x - found[0]!.x) / 100;
    expect(chart.due! - (found[1]!.x + 4)).toBeCloseTo(100 * perHour, 6);
    const perSlip = (found[0]!.y - found[1]!.y) / 1;
    expect(left[0]!.y - left[1]!.y).toBeCloseTo(2 * perSlip, 6);
  });
});

const aUnitService = (engineHours: number, found: number, left: number): UnitService => ({
  job: "16JD",
  code: "",
  date: "2027-05-01",
  engineHours,
  work: "slip-check",
  found: { lbfFt: found, expanded: 0.1 },
  left: { lbfFt: left, expanded: null },
  band: null,
});

describe("a unit's history", () => {
  const sealed = (step: number, engineHours: number, found: readonly number[]) => {
    const tool = DIGITAL;
    const entry = { kind: "slip", readings: found, breakaway: null, tool, why: null } as const;
    const service = aService({ sheet: aGentleSheet({ "as-found-slip": entry }) }, aCraft({ engineHours }));
    const record = { kind: "service", version: 1, job: "16JD", at: "", by: null, service } as const;
    return { step, hash: "ab".repeat(32), record };
  };

  it("tells how the slip falls from what was left to what was found at the next service", () => {
    const { trend }: SlipHistory = slipHistory([sealed(1, 40, [10.8, 10.8, 10.8]), sealed(2, 140, [11.5, 11.5, 11.5])]);
    // 12.5167 as left, 11.5 as found 100 h later: 1.0167 in 100 h; from 12.5167 to 12 takes 0.5167 / 0.010167 h.
    expect(trend?.lostPerTenHours?.value).toBeCloseTo(0.10167, 4);
    expect(trend?.hoursToLimit?.value).toBeCloseTo(50.8, 1);
  });

  it("tells nothing from one service, or from a slip that was read too seldom", () => {
    expect(slipHistory([sealed(1, 40, [10.8, 10.8, 10.8])]).trend).toBeNull();
    expect(slipHistory([sealed(1, 40, [10.8, 10.8, 10.8]), sealed(2, 140, [11.5])]).trend).toBeNull();
  });
});
