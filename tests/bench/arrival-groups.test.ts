import { expect, it } from "vitest";
import type { Arrival } from "#shared/shop/booking.ts";
import { groupArrivals } from "#src/bench/arrival-groups.ts";

const anArrival = (date: string, change: Partial<Arrival> = {}): Arrival => ({
  number: "16JD",
  state: "booked",
  verdict: "slip-check",
  ownerName: "Wren Calloway",
  time: { bench: "b1", benchName: "Bench 1", startsAt: 0, endsAt: 0, date, minuteOfDay: 480, zone: "UTC" },
  postBy: date,
  ...change,
});
const groupOf = (today: string, arrival: Arrival) => groupArrivals([arrival], today)[0]?.group;

/** 2027-03-03 is a Wednesday; weeks start on Monday (ISO 8601). */
it.each([
  ["2027-03-02", "slot-passed"],
  ["2027-03-03", "this-week"],
  ["2027-03-07", "this-week"],
  ["2027-03-08", "next-week"],
  ["2027-03-14", "next-week"],
  ["2027-03-15", "later"],
  ["2028-03-03", "later"],
])("on Wednesday 2027-03-03, bench time on %s is %s", (date, group) => {
  expect(groupOf("2027-03-03", anArrival(date))).toBe(group);
});

it("turns the week over between Sunday and Monday", () => {
  expect(groupOf("2027-03-07", anArrival("2027-03-08"))).toBe("next-week");
  expect(groupOf("2027-03-08", anArrival("2027-03-08"))).toBe("this-week");
});

it("puts a unit that must not be ridden first, however far ahead its time is", () => {
  const urgent = anArrival("2027-06-01", { verdict: "stop-riding" });
  const groups = groupArrivals([anArrival("2027-03-03"), urgent], "2027-03-03");
  expect(groups.map(({ group }) => group)).toEqual(["urgent", "this-week"]);
});

it("keeps cancelled jobs apart, urgent or past as they may be", () => {
  const change = { state: "cancelled", verdict: "stop-riding" } as const;
  for (const date of ["2027-03-01", "2027-03-03", "2027-06-01"]) {
    expect(groupOf("2027-03-03", anArrival(date, change))).toBe("cancelled");
  }
});

it("loses no arrival, shows none twice, and keeps the order in each group", () => {
  const arrivals = ["2027-03-05", "2027-03-03", "2027-03-09", "2027-03-04"].map((date, index) =>
    anArrival(date, { number: `J${index}` }),
  );
  const numbers = groupArrivals(arrivals, "2027-03-03").map(({ arrivals: some }) => some.map(({ number }) => number));
  expect(numbers).toEqual([["J0", "J1", "J3"], ["J2"]]);
});
