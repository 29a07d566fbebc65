import { describe, expect, it } from "vitest";
import { instantOf, isoWithOffset, wallOf } from "#shared/calendar/zone-clock.ts";
import { isZone, offsetPeriods } from "#shared/calendar/zone-rules.ts";
import { plusDays } from "#shared/units/calendar-date.ts";
import { at } from "#tests/calendar/a-calendar.ts";

/* Expected values: IANA time-zone data 2026d as Python's zoneinfo reads it, and two Temporal implementations. */

const HOUR_MS = 3_600_000;

/** In each row: the moments of 2027 at which the zone's offset changes, and the offsets around them. */
const CHANGES_2027: readonly (readonly [zone: string, offsets: readonly string[], instants: readonly string[]])[] = [
  ["America/New_York", ["-05:00", "-04:00", "-05:00"], ["2027-03-14T07:00Z", "2027-11-07T06:00Z"]],
  ["America/Los_Angeles", ["-08:00", "-07:00", "-08:00"], ["2027-03-14T10:00Z", "2027-11-07T09:00Z"]],
  ["America/St_Johns", ["-03:30", "-02:30", "-03:30"], ["2027-03-14T05:30Z", "2027-11-07T04:30Z"]],
  ["America/Halifax", ["-04:00", "-03:00", "-04:00"], ["2027-03-14T06:00Z", "2027-11-07T05:00Z"]],
  ["Europe/London", ["+00:00", "+01:00", "+00:00"], ["2027-03-28T01:00Z", "2027-10-31T01:00Z"]],
  ["Australia/Lord_Howe", ["+11:00", "+10:30", "+11:00"], ["2027-04-03T15:00Z", "2027-10-02T15:30Z"]],
  ["Australia/Sydney", ["+11:00", "+10:00", "+11:00"], ["2027-04-03T16:00Z", "2027-10-02T16:00Z"]],
  ["Pacific/Auckland", ["+13:00", "+12:00", "+13:00"], ["2027-04-03T14:00Z", "2027-09-25T14:00Z"]],
  ["Pacific/Chatham", ["+13:45", "+12:45", "+13:45"], ["2027-04-03T14:00Z", "2027-09-25T14:00Z"]],
  ["Africa/Cairo", ["+02:00", "+03:00", "+02:00"], ["2027-04-29T22:00Z", "2027-10-28T21:00Z"]],
  ["America/Santiago", ["-03:00", "-04:00", "-03:00"], ["2027-04-04T03:00Z", "2027-09-05T04:00Z"]],
  ["Antarctica/Troll", ["+00:00", "+02:00", "+00:00"], ["2027-03-28T01:00Z", "2027-10-31T01:00Z"]],
  ["America/Nuuk", ["-02:00", "-01:00", "-02:00"], ["2027-03-28T01:00Z", "2027-10-31T01:00Z"]],
  ["Asia/Kolkata", ["+05:30"], []],
  ["America/Phoenix", ["-07:00"], []],
];

describe("the offsets of a zone", () => {
  it.each(CHANGES_2027)("%s changes in 2027 when the data say, and at no other moment", (zone, offsets, instants) => {
    const periods = offsetPeriods(zone, 2027);
    expect(periods.map(({ from }) => from).slice(1)).toEqual(instants.map(at));
    expect(periods.map(({ offsetMs }) => offsetMs / HOUR_MS)).toEqual(offsets.map(hoursOf));
    instants.forEach((instant, index) => {
      expect(wallOf(zone, at(instant) - 1).offset).toBe(offsets[index]);
      expect(wallOf(zone, at(instant)).offset).toBe(offsets[index + 1]);
    });
  });

  it.each([
    ["America/New_York", "2026-11-01T06:00Z", "-04:00", "-05:00"],
    ["Europe/London", "2026-03-29T01:00Z", "+00:00", "+01:00"],
    ["Europe/London", "2026-10-25T01:00Z", "+01:00", "+00:00"],
    ["Australia/Lord_Howe", "2026-04-04T15:00Z", "+11:00", "+10:30"],
    ["Australia/Lord_Howe", "2026-10-03T15:30Z", "+10:30", "+11:00"],
    ["Pacific/Chatham", "2026-09-26T14:00Z", "+12:45", "+13:45"],
    ["Africa/Cairo", "2026-04-23T22:00Z", "+02:00", "+03:00"],
    ["America/Santiago", "2026-09-06T04:00Z", "-04:00", "-03:00"],
    ["America/Nuuk", "2026-10-25T01:00Z", "-01:00", "-02:00"],
  ])("%s changes at %s", (zone, instant, before, after) => {
    expect(wallOf(zone, at(instant) - 1).offset).toBe(before);
    expect(wallOf(zone, at(instant)).offset).toBe(after);
  });

  it.each([
    ["America/Vancouver", "2027-01-15T20:00Z", "-07:00"],
    ["America/Edmonton", "2027-01-15T20:00Z", "-06:00"],
    ["Africa/Casablanca", "2027-01-15T20:00Z", "+00:00"],
  ])("%s keeps to the law that was made in 2026", (zone, instant, offset) => {
    expect(wallOf(zone, at(instant)).offset).toBe(offset);
  });
});

describe("from the wall clock to the instant", () => {
  it.each([
    ["America/New_York", "2027-03-14", "02:00", "2027-03-14T07:00Z"],
    ["America/New_York", "2027-03-14", "02:30", "2027-03-14T07:30Z"],
    ["America/New_York", "2027-03-14", "03:00", "2027-03-14T07:00Z"],
    ["America/New_York", "2027-03-14", "01:59", "2027-03-14T06:59Z"],
    ["America/New_York", "2026-11-01", "01:30", "2026-11-01T05:30Z"],
    ["America/New_York", "2026-11-01", "02:00", "2026-11-01T07:00Z"],
    ["America/New_York", "2027-11-07", "01:30", "2027-11-07T05:30Z"],
    ["Europe/London", "2027-03-28", "01:30", "2027-03-28T01:30Z"],
    ["Europe/London", "2026-10-25", "01:30", "2026-10-25T00:30Z"],
    ["Australia/Lord_Howe", "2027-04-04", "01:45", "2027-04-03T14:45Z"],
    ["Australia/Lord_Howe", "2026-10-04", "02:15", "2026-10-03T15:45Z"],
    ["Asia/Kolkata", "2027-03-14", "02:30", "2027-03-13T21:00Z"],
    ["Australia/Sydney", "2026-10-04", "02:30", "2026-10-03T16:30Z"],
    ["America/St_Johns", "2027-03-14", "02:30", "2027-03-14T06:00Z"],
    ["Africa/Cairo", "2027-04-30", "00:30", "2027-04-29T22:30Z"],
    ["America/Santiago", "2027-04-03", "23:30", "2027-04-04T02:30Z"],
  ])("%s %s %s is %s: a skipped time moves on, a time that comes twice is the first", (zone, date, clock, instant) => {
    expect(new Date(instantOf(zone, date, minuteOf(clock)))).toEqual(new Date(at(instant)));
  });

  it.each([
    ["America/New_York", "2027-03-14", 23],
    ["America/New_York", "2026-11-01", 25],
    ["Australia/Lord_Howe", "2027-04-04", 24.5],
    ["Australia/Lord_Howe", "2026-10-04", 23.5],
    ["Asia/Kolkata", "2027-03-14", 24],
  ])("%s has on %s a day of %d hours", (zone, date, hours) => {
    const midnight = instantOf(zone, date, 0);
    expect(instantOf(zone, plusDays(date, 1), 0) - midnight).toBe(hours * HOUR_MS);
    expect(instantOf(zone, date, 1440) - midnight).toBe(hours * HOUR_MS);
  });

  it("passes over the day that Samoa left out when it crossed the date line", () => {
    expect(instantOf("Pacific/Apia", "2011-12-31", 0) - instantOf("Pacific/Apia", "2011-12-29", 0)).toBe(24 * HOUR_MS);
    expect(wallOf("Pacific/Apia", instantOf("Pacific/Apia", "2011-12-30", 540)).date).toBe("2011-12-31");
  });
});

describe("an instant as text", () => {
  it.each([
    ["America/New_York", "2027-03-15T13:00:00Z", "2027-03-15T09:00:00-04:00"],
    ["Asia/Kolkata", "2027-03-14T18:30:05Z", "2027-03-15T00:00:05+05:30"],
    ["Pacific/Chatham", "2027-01-01T10:15:00Z", "2027-01-02T00:00:00+13:45"],
    ["America/St_Johns", "2027-01-01T03:29:00Z", "2026-12-31T23:59:00-03:30"],
    ["Europe/London", "2027-01-01T00:00:00Z", "2027-01-01T00:00:00+00:00"],
  ])("%s shows %s as %s", (zone, instant, text) => {
    expect(isoWithOffset(zone, at(instant))).toBe(text);
    expect(wallOf(zone, at(instant))).toEqual({
      date: text.slice(0, 10),
      minuteOfDay: minuteOf(text.slice(11, 16)),
      offset: text.slice(-6),
    });
  });
});

describe("the name of a zone", () => {
  it.each(["America/New_York", "Europe/London", "Pacific/Chatham", "UTC", "Etc/GMT+5"])("%s is one", (text) => {
    expect(isZone(text)).toBe(true);
  });

  it.each([
    "",
    "Lake/Nowhere",
    "+05:00",
    "america/new_york",
    "2027-01-01T00:00Z",
    "2027-01-01T00:00+01:00[Europe/Paris]",
  ])("%j is none", (text) => {
    expect(isZone(text)).toBe(false);
  });
});

const minuteOf = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
const hoursOf = (offset: string) =>
  (offset.startsWith("-") ? -1 : 1) * (Number(offset.slice(1, 3)) + Number(offset.slice(4)) / 60);
