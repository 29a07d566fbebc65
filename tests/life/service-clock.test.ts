import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { latestDayFor, riddenSince } from "#shared/life/hours-now.ts";
import { hoursBetween } from "#shared/life/hours-span.ts";
import { serviceClock } from "#shared/life/service-clock.ts";
import { aCraft, done, FORGOTTEN, ON_DATE } from "#tests/support/a-craft.ts";
import { forget, forgettable, trueCrafts } from "#tests/support/craft-arbitraries.ts";

/** The most that an owner is taken to ride in a year: default of this project. */
const PACE = 150;
const clockOf = (craft: Partial<Answers>) => serviceClock(aCraft(craft), ON_DATE, PACE);
const exactly = (hours: number) => ({ least: hours, most: hours });
const upTo = (hours: number) => ({ least: 0, most: hours });

/** 365 days at 150 h in 365.25. */
const A_YEAR = (365 / 365.25) * PACE;
const near = ({ least, most }: { least: number; most: number }) => ({
  least: expect.closeTo(least, 5),
  most: expect.closeTo(most, 5),
});

describe("hours since the last rebuild and slip setting", () => {
  it.each<[string, Partial<Answers>, { least: number; most: number }, { least: number; most: number }]>([
    ["never: both since new", {}, exactly(40), exactly(40)],
    ["a rebuild sets the slip too", { lastRebuild: done("2026-05-01", 10) }, exactly(30), exactly(30)],
    ["a slip setting is no rebuild", { lastSlipSet: done("2026-05-01", 10) }, exactly(40), exactly(30)],
    [
      "the slip set after the rebuild counts",
      { lastRebuild: done("2026-05-01", 10), lastSlipSet: done("2026-09-01", 35) },
      exactly(30),
      exactly(5),
    ],
    [
      "the slip set before the rebuild does not",
      { lastRebuild: done("2026-09-01", 35), lastSlipSet: done("2026-05-01", 10) },
      exactly(5),
      exactly(5),
    ],
    [
      "where no date tells which was the later, the hours do",
      { lastRebuild: done(null, 10), lastSlipSet: done(null, 35) },
      exactly(30),
      exactly(5),
    ],
    [
      "a slip set before the rebuild does not count even where its hours are unknown",
      { lastRebuild: done("2026-09-01", 35), lastSlipSet: done("2026-05-01", null) },
      exactly(5),
      exactly(5),
    ],
    [
      "and then a rebuild of unknown hours cannot lie further back than it",
      { lastRebuild: done("2026-09-01", null), lastSlipSet: done("2026-05-01", 35) },
      upTo(5),
      upTo(5),
    ],
    [
      "a slip set after it, its hours unknown, cannot lie further back than the rebuild",
      { lastRebuild: done("2026-05-01", 35), lastSlipSet: done("2026-09-01", null) },
      exactly(5),
      upTo(5),
    ],
    [
      "a rebuild before a known slip setting cannot lie less far back",
      { engineHours: 300, lastRebuild: done("2026-05-01", null), lastSlipSet: done("2026-09-01", 90) },
      exactly(210),
      exactly(210),
    ],
    ["a forgotten slip setting may be just done", { lastSlipSet: FORGOTTEN }, exactly(40), upTo(40)],
    ["a forgotten rebuild may be just done", { lastRebuild: FORGOTTEN }, upTo(40), upTo(40)],
    [
      "a forgotten rebuild may lie after the known slip setting",
      { lastRebuild: FORGOTTEN, lastSlipSet: done("2026-09-01", 35) },
      upTo(40),
      upTo(5),
    ],
    [
      "hours at a service unknown: up to the pace since its date",
      { engineHours: 400, lastRebuild: done("2026-05-01", null) },
      upTo(A_YEAR),
      upTo(A_YEAR),
    ],
    ["capped by the hours now", { engineHours: 99, lastRebuild: done("2026-05-01", null) }, upTo(99), upTo(99)],
    ["neither date nor hours: any of the hours now", { lastRebuild: done(null, null) }, upTo(40), upTo(40)],
    [
      "hours now unknown: up to the pace since the service",
      { engineHours: null, lastRebuild: done("2026-05-01", 10) },
      upTo(A_YEAR),
      upTo(A_YEAR),
    ],
    [
      "hours now unknown, and the later of two services tells most about them",
      { engineHours: null, lastRebuild: done("2025-05-01", 10), lastSlipSet: done("2026-05-01", 35) },
      { least: 25, most: 25 + A_YEAR },
      upTo(A_YEAR),
    ],
    [
      "hours now unknown, a service at more hours than the pace allows: this owner rides faster",
      { engineHours: null, builtYear: 2027, lastSlipSet: done(null, 300) },
      { least: 300, most: 300 + (120 / 365.25) * PACE },
      upTo((120 / 365.25) * PACE),
    ],
    ["nothing known", { engineHours: null, builtYear: null }, upTo(Infinity), upTo(Infinity)],
    [
      "nothing but the hours at the slip setting",
      { engineHours: null, builtYear: null, lastSlipSet: done(null, 35) },
      { least: 35, most: Infinity },
      upTo(Infinity),
    ],
  ])("%s", (_because, craft, sinceRebuild, sinceSlipSet) => {
    const clock = clockOf(craft);
    expect(clock.sinceRebuild).toEqual(near(sinceRebuild));
    expect(clock.sinceSlipSet).toEqual(near(sinceSlipSet));
  });

  it("always holds the truth, whatever was forgotten of it", () => {
    fc.assert(
      fc.property(trueCrafts, fc.uniqueArray(forgettable), ({ answers, onDate }, forgotten) => {
        const truth = serviceClock(answers, onDate, PACE);
        const clock = serviceClock(forget(answers, ...forgotten), onDate, PACE);
        for (const since of ["sinceRebuild", "sinceSlipSet"] as const) {
          expect(truth[since].least).toBe(truth[since].most);
          expect(clock[since].least).toBeLessThanOrEqual(truth[since].least + 1e-6);
          expect(clock[since].most).toBeGreaterThanOrEqual(truth[since].most - 1e-6);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

describe("hours of the meter at the services, as early as they may have been", () => {
  it.each<[string, Partial<Answers>, number | null, number | null]>([
    ["new at 0 h", {}, 0, 0],
    ["as told", { lastRebuild: done("2026-05-01", 10), lastSlipSet: done("2026-09-01", 35) }, 10, 35],
    ["as told, the hours now unknown", { engineHours: null, lastRebuild: done("2026-05-01", 10) }, 10, 10],
    ["forgotten: as if never", { lastRebuild: FORGOTTEN, lastSlipSet: FORGOTTEN }, 0, 0],
    ["nothing tells", { engineHours: null, lastRebuild: done("2026-05-01", null) }, null, null],
    [
      "the slip not before the rebuild",
      { engineHours: null, lastRebuild: done("2026-05-01", 10), lastSlipSet: done("2026-09-01", null) },
      10,
      10,
    ],
  ])("%s", (_because, craft, rebuiltAtHours, slipSetAtHours) => {
    expect(clockOf(craft)).toMatchObject({ rebuiltAtHours, slipSetAtHours });
  });
});

describe("the months", () => {
  it.each<[string, Partial<Answers>, string | null]>([
    ["count from the rebuild", { lastRebuild: done("2026-05-01", null) }, "2026-05-01"],
    ["not from a slip setting", { lastSlipSet: done("2026-05-01", 10) }, "2026-01-01"],
    ["else from the start of the year built", {}, "2026-01-01"],
    ["so too where the rebuild is forgotten", { lastRebuild: FORGOTTEN }, "2026-01-01"],
    ["so too where its date is", { lastRebuild: done(null, 10) }, "2026-01-01"],
    ["else from nowhere", { builtYear: null }, null],
  ])("%s", (_because, craft, monthsFrom) => {
    expect(clockOf(craft).monthsFrom).toBe(monthsFrom);
  });
});

describe("the pace", () => {
  it("takes 365.25 days for a year's hours", () => {
    expect(riddenSince("2026-05-01", "2027-05-01", 150)).toBeCloseTo(149.897, 3);
    expect(riddenSince("2027-06-01", "2027-05-01", 150)).toBe(0);
  });

  it("finds the latest day by which so many hours can have been ridden", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5000 }).map((tenths) => tenths / 10),
        (hours) => {
          const day = latestDayFor(hours, ON_DATE, PACE);
          expect(riddenSince(day, ON_DATE, PACE)).toBeGreaterThanOrEqual(hours - 1e-9);
          expect(riddenSince(day, ON_DATE, PACE)).toBeLessThan(hours + PACE / 365.25 + 1e-9);
        },
      ),
    );
  });

  it("counts hours as a meter shows them, whatever floats make of them", () => {
    expect(160.7 - 60.7).not.toBe(100);
    expect(hoursBetween(60.7, 160.7)).toBe(100);
    expect(hoursBetween(60, 40)).toBe(0);
  });
});
