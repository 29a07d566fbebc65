import { expect, it } from "vitest";
import { sourceText } from "#shared/basics/source.ts";
import { CALENDAR_SOURCE, CalendarSettingsSchema, DEFAULT_CALENDAR } from "#shared/calendar/calendar-settings.ts";
import { aCalendar, openOn } from "#tests/calendar/a-calendar.ts";

/** Where a calendar is at fault, as the settings page names its fields. */
const faults = (settings: unknown): readonly string[] =>
  (CalendarSettingsSchema.safeParse(settings).error?.issues ?? []).map(({ path }) => path.join("."));

it("accepts the calendar that a new shop starts from, and says where its numbers come from", () => {
  expect(CalendarSettingsSchema.parse(DEFAULT_CALENDAR)).toEqual(DEFAULT_CALENDAR);
  expect(sourceText(CALENDAR_SOURCE)).toBe("default of this project");
});

it("survives being stored as text", () => {
  expect(CalendarSettingsSchema.parse(JSON.parse(JSON.stringify(DEFAULT_CALENDAR)))).toEqual(DEFAULT_CALENDAR);
});

it("accepts a day that is worked to its very end and one with a break", () => {
  expect(faults(aCalendar({ weekly: openOn("12", ["00:00", "08:00"], ["08:00", "24:00"]) }))).toEqual([]);
});

it("accepts a closure of a single day", () => {
  expect(faults(aCalendar(closed("2027-07-05", "2027-07-05")))).toEqual([]);
});

it.each([
  ["a zone that nobody knows", { zone: "Lake/Nowhere" }, "zone"],
  ["a fixed offset for a zone", { zone: "-05:00" }, "zone"],
  ["an opening off the quarter-hour", { weekly: openOn("1", ["08:10", "17:00"]) }, "weekly.1.0.opens"],
  [
    "an opening that ends before it begins",
    { weekly: openOn("3", ["00:00", "17:00"], ["19:00", "18:00"]) },
    "weekly.3.1.closes",
  ],
  ["an opening of no length", { weekly: openOn("3", ["00:00", "23:00"], ["23:30", "23:30"]) }, "weekly.3.1.closes"],
  ["a time after the day's end", { weekly: openOn("3", ["08:00", "24:15"]) }, "weekly.3.0.closes"],
  ["openings that overlap", { weekly: openOn("5", ["08:00", "13:15"], ["13:00", "19:00"]) }, "weekly.5"],
  ["openings out of order", { weekly: openOn("5", ["13:00", "19:00"], ["07:00", "12:30"]) }, "weekly.5"],
  ["a closure that ends before it begins", closed("2027-07-05", "2027-07-04"), "closures.0.to"],
  ["a closure on a day that is none", closed("2027-02-29", "2027-03-01"), "closures.0.from"],
  ["no bench", { benches: [] }, "benches"],
  ["two benches of one name in the books", { benches: [aBench("b1"), aBench("b1")] }, "benches"],
  ["a bench id that an offer's id could not carry", { benches: [aBench("b.1")] }, "benches.0.id"],
  ["nine benches", { benches: Array.from({ length: 9 }, (_, index) => aBench(`b${index}`)) }, "benches"],
  ["a job off the quarter-hour", { minutes: { ...DEFAULT_CALENDAR.minutes, "slip-check": 50 } }, "minutes.slip-check"],
  [
    "a job longer than any opening",
    { weekly: openOn("12345", ["08:00", "12:00"], ["13:00", "17:45"]) },
    "minutes.stop-riding",
  ],
  ["an urgent lead longer than the other", { leadWorkingDays: { standard: 2, urgent: 3 } }, "leadWorkingDays.urgent"],
  ["half a day of lead", { leadWorkingDays: { standard: 4, urgent: 1.5 } }, "leadWorkingDays.urgent"],
  ["a hold of no time", { holdMinutes: 0 }, "holdMinutes"],
  ["a field nobody knows", { holdHours: 1 }, ""],
])("refuses %s and names the field", (_, different, field) => {
  expect(faults({ ...DEFAULT_CALENDAR, ...different })).toEqual([field]);
});

function closed(from: string, to: string) {
  return { closures: [{ from, to, why: "holiday" }] };
}

function aBench(id: string) {
  return { id, name: "Bench" };
}
