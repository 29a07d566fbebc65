import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEFAULT_CALENDAR } from "#shared/calendar/calendar-settings.ts";
import { postBy } from "#shared/calendar/post-by.ts";
import { isOpenDay, minusWorkingDays, plusWorkingDays } from "#shared/calendar/working-days.ts";
import { dateOfDay, dayNumber, plusDays } from "#shared/units/calendar-date.ts";
import { aCalendar, calendars, openOn } from "#tests/calendar/a-calendar.ts";
import { isOpenDate } from "#tests/calendar/wall-clock-oracle.ts";

const days = fc.integer({ min: dayNumber("2026-10-10"), max: dayNumber("2027-05-10") }).map(dateOfDay);
const counts = fc.integer({ min: 0, max: 8 });

describe("a working day", () => {
  it("has an opening that week and no closure", () => {
    fc.assert(
      fc.property(calendars, days, (settings, date) => {
        expect(isOpenDay(date, settings)).toBe(isOpenDate(settings, date));
      }),
    );
  });

  it.each([
    ["1970-01-01", "4"],
    ["1969-12-25", "4"],
    ["2027-05-02", "7"],
    ["2028-02-29", "2"],
  ])("%s was or will be weekday %s of ISO 8601", (date, weekday) => {
    expect(isOpenDay(date, aCalendar({ weekly: openOn(weekday, ["08:00", "17:00"]) }))).toBe(true);
    const others = "1234567".replace(weekday, "");
    expect(isOpenDay(date, aCalendar({ weekly: openOn(others, ["08:00", "17:00"]) }))).toBe(false);
  });
});

describe("counting working days", () => {
  const closedInMay = aCalendar({ closures: [{ from: "2027-05-04", to: "2027-05-05", why: "stocktaking" }] });

  it.each([
    ["from a Thursday over the week-end", "2027-05-06", 4, DEFAULT_CALENDAR, "2027-05-12"],
    ["from a Saturday as from the Monday", "2027-05-01", 4, DEFAULT_CALENDAR, "2027-05-07"],
    ["over a closure, both of its ends closed", "2027-05-03", 1, closedInMay, "2027-05-06"],
    ["from within a closure as from the day after it", "2027-05-04", 1, closedInMay, "2027-05-07"],
    ["none from an open day", "2027-05-03", 0, DEFAULT_CALENDAR, "2027-05-03"],
    ["none from a closed day", "2027-05-02", 0, DEFAULT_CALENDAR, "2027-05-03"],
  ])("goes on %s", (_, date, count, settings, expected) => {
    expect(plusWorkingDays(date, count, settings)).toEqual({ ok: true, value: expected });
  });

  it("goes back to the last day from which counting on comes in time", () => {
    fc.assert(
      fc.property(calendars, days, counts, (settings, date, count) => {
        const back = minusWorkingDays(date, count, settings);
        fc.pre(back.ok);
        if (!back.ok) return;
        const reaches = (from: string) => {
          const on = plusWorkingDays(from, count, settings);
          return on.ok && on.value <= date;
        };
        expect(reaches(back.value)).toBe(true);
        for (let ahead = 1; ahead < 40; ahead += 1) expect(reaches(plusDays(back.value, ahead))).toBe(false);
      }),
    );
  });

  it("is an answer and no endless loop where the shop is closed for a year or for ever", () => {
    const closedForAYear = aCalendar({ closures: [{ from: "2027-05-01", to: "2028-05-01", why: "rebuilding" }] });
    const refusal = { ok: false, refusal: "no-open-day" };
    expect(plusWorkingDays("2027-05-01", 0, closedForAYear)).toEqual(refusal);
    expect(minusWorkingDays("2028-04-30", 0, closedForAYear)).toEqual(refusal);
    expect(plusWorkingDays("2027-05-01", 1, aCalendar({ weekly: openOn("") }))).toEqual(refusal);
  });
});

describe("the last day to post", () => {
  it.each([
    ["2027-05-07", "full-rebuild", "2027-05-03"],
    ["2027-05-07", "not-due", "2027-05-03"],
    ["2027-05-07", "stop-riding", "2027-05-05"],
    ["2027-05-10", "slip-check", "2027-05-04"],
  ] as const)("for %s and %s is %s", (benchDay, verdict, expected) => {
    expect(postBy(benchDay, verdict, DEFAULT_CALENDAR)).toBe(expected);
  });

  it("is the bench day itself where closures leave nothing to count back to", () => {
    const closed = aCalendar({ closures: [{ from: "2026-01-01", to: "2027-05-06", why: "rebuilding" }] });
    expect(postBy("2027-05-07", "full-rebuild", closed)).toBe("2027-05-07");
  });
});
