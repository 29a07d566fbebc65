import { Temporal } from "@js-temporal/polyfill";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dateOfDay, dayNumber, daysBetween, plusDays, plusMonths, yearsBetween } from "#shared/units/calendar-date.ts";

/** 1900-01-01 to 2199-12-31: across leap years and the century years that are none. */
const days = fc.integer({ min: -25_567, max: 84_005 });
const dates = days.map((day) => Temporal.PlainDate.from("1970-01-01").add({ days: day }).toString());
const spanDays = fc.integer({ min: -40_000, max: 40_000 });
const spanMonths = fc.integer({ min: -600, max: 600 });

describe("calendar dates as text", () => {
  it.each([
    ["2027-01-31", 1, "2027-02-28", "a shorter month ends early"],
    ["2028-01-31", 1, "2028-02-29", "a leap year has the day"],
    ["2028-02-29", 12, "2029-02-28", "the day is missing a year later"],
    ["2100-01-30", 1, "2100-02-28", "a century year is no leap year"],
    ["2025-04-01", 24, "2027-04-01", "two years on"],
    ["2027-03-31", -1, "2027-02-28", "backwards keeps to the end too"],
    ["2026-12-31", 2, "2027-02-28", "over the year's end"],
  ])("%s and %d months is %s, because %s", (date, months, expected) => {
    expect(plusMonths(date, months)).toBe(expected);
  });

  it("adds months as Temporal does with overflow constrained", () => {
    fc.assert(
      fc.property(dates, spanMonths, (date, months) => {
        const oracle = Temporal.PlainDate.from(date).add({ months }, { overflow: "constrain" });
        expect(plusMonths(date, months)).toBe(oracle.toString());
      }),
    );
  });

  it("adds days and counts days as Temporal does", () => {
    fc.assert(
      fc.property(dates, dates, spanDays, (date, other, span) => {
        const from = Temporal.PlainDate.from(date);
        expect(plusDays(date, span)).toBe(from.add({ days: span }).toString());
        expect(daysBetween(date, other)).toBe(from.until(other, { largestUnit: "day" }).days);
      }),
    );
  });

  it("numbers the days from 1970-01-01 and back, one to one", () => {
    expect(dayNumber("1970-01-01")).toBe(0);
    fc.assert(
      fc.property(days, (day) => {
        expect(dayNumber(dateOfDay(day))).toBe(day);
        expect(dayNumber(plusDays(dateOfDay(day), 1))).toBe(day + 1);
      }),
    );
  });

  it("orders dates as their text does", () => {
    fc.assert(
      fc.property(dates, dates, (one, other) => {
        expect(Math.sign(daysBetween(one, other))).toBe(one < other ? 1 : one > other ? -1 : 0);
      }),
    );
  });

  it("never adds months into a later month than asked, and later is never earlier", () => {
    fc.assert(
      fc.property(dates, fc.integer({ min: 0, max: 600 }), (date, months) => {
        const later = plusMonths(date, months);
        expect(plusMonths(date, months + 1) > later).toBe(true);
        const monthIndex = (text: string) => Number(text.slice(0, 4)) * 12 + Number(text.slice(5, 7));
        expect(monthIndex(later) - monthIndex(date)).toBe(months);
      }),
    );
  });

  it("counts years within three days of the calendar's: leap days, a century year and a missing 29 February add up", () => {
    fc.assert(
      fc.property(dates, fc.integer({ min: 0, max: 40 }), (date, years) => {
        const later = Temporal.PlainDate.from(date).add({ years }).toString();
        expect(Math.abs(yearsBetween(date, later) - years) * 365.25).toBeLessThan(3);
      }),
    );
  });
});
