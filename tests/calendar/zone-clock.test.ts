import { Temporal } from "@js-temporal/polyfill";
import * as fc from "fast-check";
import { expect, it, vi } from "vitest";
import { instantOf, isoWithOffset, wallOf } from "#shared/calendar/zone-clock.ts";
import { dateOfDay, dayNumber } from "#shared/units/calendar-date.ts";

/** Another date library is asked hundreds of times, which takes its time on a busy machine. */
vi.setConfig({ testTimeout: 60_000 });

const zones = fc.constantFrom(
  "America/New_York",
  "America/St_Johns",
  "America/Santiago",
  "America/Nuuk",
  "Europe/London",
  "Africa/Cairo",
  "Africa/Casablanca",
  "Antarctica/Troll",
  "Asia/Kolkata",
  "Australia/Lord_Howe",
  "Pacific/Apia",
  "Pacific/Chatham",
  "UTC",
);
const days = fc.integer({ min: dayNumber("2010-01-01"), max: dayNumber("2036-01-01") });
/** Every date near a change of year or of clocks comes up more often than chance would have it. */
const dates = fc.oneof(
  days.map(dateOfDay),
  fc.constantFrom("2026-12-31", "2027-01-01", "2027-03-14", "2027-11-07", "2027-03-28", "2027-10-31", "2011-12-30"),
  fc.constantFrom("2027-04-04", "2027-10-03", "2027-04-30", "2027-10-29", "2027-09-05", "2027-04-03", "2026-10-24"),
);
const minutes = fc.oneof(fc.integer({ min: 0, max: 1439 }), fc.integer({ min: 0, max: 240 }));

it("finds the instant that an independent Temporal finds", () => {
  fc.assert(
    fc.property(zones, dates, minutes, (zone, date, minute) => {
      const wall = Temporal.PlainDate.from(date).toPlainDateTime({
        hour: Math.floor(minute / 60),
        minute: minute % 60,
      });
      expect(instantOf(zone, date, minute)).toBe(wall.toZonedDateTime(zone).epochMilliseconds);
    }),
    { numRuns: 500 },
  );
});

it("shows the wall time and offset that an independent Temporal shows", () => {
  fc.assert(
    fc.property(zones, dates, fc.integer({ min: 0, max: 86_399_999 }), (zone, date, milliseconds) => {
      const instant = Date.parse(date) + milliseconds;
      const there = Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);
      expect(wallOf(zone, instant)).toEqual({
        date: there.toPlainDate().toString(),
        minuteOfDay: there.hour * 60 + there.minute,
        offset: there.offset,
      });
      expect(isoWithOffset(zone, instant)).toBe(
        there.round({ smallestUnit: "second", roundingMode: "trunc" }).toString({ timeZoneName: "never" }),
      );
    }),
    { numRuns: 500 },
  );
});

it("knows of a change at the turn of the year from both sides", () => {
  /* Nepal moved its clocks on by a quarter of an hour at midnight, 1986-01-01. */
  expect(instantOf("Asia/Kathmandu", "1986-01-01", 5)).toBe(Date.parse("1985-12-31T18:35Z"));
  expect(wallOf("Asia/Kathmandu", Date.parse("1985-12-31T18:29Z")).offset).toBe("+05:30");
  expect(wallOf("Asia/Kathmandu", Date.parse("1986-01-01T00:00Z")).offset).toBe("+05:45");
});

it("gives the same answers when it has looked at more years and zones than it keeps in mind", () => {
  const first = instantOf("America/New_York", "2027-06-01", 540);
  for (let year = 1980; year < 2060; year += 1) instantOf("America/St_Johns", `${year}-06-01`, 540);
  expect(instantOf("America/New_York", "2027-06-01", 540)).toBe(first);
});
