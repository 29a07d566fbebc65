import * as fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { benchNeed } from "#shared/calendar/bench-job.ts";
import { checkSlot } from "#shared/calendar/bookable.ts";
import { DEFAULT_CALENDAR } from "#shared/calendar/calendar-settings.ts";
import { changeableUntil, mayChange } from "#shared/calendar/changeable.ts";
import { offerId, parseOfferId } from "#shared/calendar/offer-id.ts";
import { quantum } from "#shared/calendar/quantum.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { aCalendar, at, busyBetween, openOn, searches } from "#tests/calendar/a-calendar.ts";
import {
  arrivalDate,
  isFree,
  isWithinOneOpening,
  lastDayIn,
  todayIn,
  wallOfQuantum,
} from "#tests/calendar/wall-clock-oracle.ts";

/** The oracle asks a date library about every quarter-hour, which takes its time on a busy machine. */
vi.setConfig({ testTimeout: 60_000 });

/** Monday 2027-04-26, 10:00 in New York. */
const monday = at("2027-04-26T14:00Z");
const idOf = (bench: string, start: string) => offerId(bench, quantum(at(start) / 900_000));
const check = (id: string, verdict: Verdict = "slip-check", different: Partial<Parameters<typeof checkSlot>[0]> = {}) =>
  checkSlot({ settings: DEFAULT_CALENDAR, busy: [], offerId: id, verdict, now: monday, ...different });
const refused = (refusal: string) => ({ ok: false, refusal });

describe("an offer's id", () => {
  it("names its bench and start, and reads back the same", () => {
    const benches = fc.stringMatching(/^[a-z0-9]{1,4}(-[a-z0-9]{1,4}){0,2}$/);
    fc.assert(
      fc.property(benches, fc.integer({ min: 0, max: 36 ** 6 - 1 }), (bench, start) => {
        expect(parseOfferId(offerId(bench, quantum(start)))).toEqual({ ok: true, value: { bench, start } });
      }),
    );
  });

  it("has one spelling only: what is read is written the same", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a-b0-1.-]{0,9}$/), (text) => {
        const read = parseOfferId(text);
        if (read.ok) expect(offerId(read.value.bench, read.value.start)).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    "",
    "b1",
    "b1.",
    ".1",
    "b1.01",
    "b1.1.1",
    "B1.1",
    "b1.A",
    "b1.-1",
    "b1.1 ",
    "b1.1\n",
    "b1.zzzzzzz",
    "b 1.1",
  ])("is not %j", (text) => {
    expect(parseOfferId(text)).toEqual(refused("not-an-offer-id"));
  });
});

describe("a slot", () => {
  it("is granted with its wall time, zone and instant", () => {
    expect(check(idOf("b2", "2027-04-30T15:15Z"), "full-rebuild")).toEqual({
      ok: true,
      value: {
        bench: "b2",
        benchName: "Bench 2",
        from: at("2027-04-30T15:15Z") / 900_000,
        to: at("2027-04-30T19:15Z") / 900_000,
        startsAt: at("2027-04-30T15:15Z"),
        endsAt: at("2027-04-30T19:15Z"),
        date: "2027-04-30",
        minuteOfDay: 11 * 60 + 15,
        zone: "America/New_York",
      },
    });
  });

  it.each([
    ["whose id is none", "next friday", "slip-check", "not-a-slot"],
    ["on a bench that the shop lacks", idOf("b9", "2027-05-04T12:00Z"), "slip-check", "no-such-bench"],
    ["that is over", idOf("b1", "2027-04-26T13:45Z"), "slip-check", "in-the-past"],
    ["a day more than a year ahead", idOf("b1", "2028-04-26T12:00Z"), "slip-check", "too-far-ahead"],
    ["in the year 60000", "b1.zzzzzz", "slip-check", "too-far-ahead"],
    ["on a Sunday", idOf("b1", "2027-05-02T12:00Z"), "slip-check", "closed"],
    ["before the shop opens", idOf("b1", "2027-05-04T11:45Z"), "slip-check", "closed"],
    ["that runs past closing", idOf("b1", "2027-05-04T17:15Z"), "full-rebuild", "closed"],
    ["before the unit is there", idOf("b1", "2027-04-29T20:00Z"), "slip-check", "before-arrival"],
    ["before even an express unit is there", idOf("b1", "2027-04-27T12:00Z"), "stop-riding", "before-arrival"],
  ] as const)("%s is refused", (_, id, verdict, refusal) => {
    expect(check(id, verdict)).toEqual(refused(refusal));
  });

  it.each([
    ["a year ahead to the day", idOf("b1", "2028-04-25T12:00Z"), "slip-check"],
    ["that ends at closing", idOf("b1", "2027-05-04T17:00Z"), "full-rebuild"],
    ["within the express lead, for an urgent unit", idOf("b1", "2027-04-28T12:00Z"), "stop-riding"],
    ["on the day of arrival", idOf("b1", "2027-04-30T12:00Z"), "slip-check"],
  ] as const)("%s is granted", (_, id, verdict) => {
    expect(check(id, verdict).ok).toBe(true);
  });

  it("may start this very moment, and a moment later no more", () => {
    const settings = aCalendar({ leadWorkingDays: { standard: 0, urgent: 0 } });
    const id = idOf("b1", "2027-04-26T14:00Z");
    expect(check(id, "slip-check", { settings }).ok).toBe(true);
    expect(check(id, "slip-check", { settings, now: monday + 1 })).toEqual(refused("in-the-past"));
  });

  it("is taken by a job that overlaps it by a quarter-hour on the same bench, and only then", () => {
    const id = idOf("b1", "2027-05-04T14:00Z");
    const busy = (bench: string, from: string, to: string) => ({ busy: [busyBetween(bench, from, to)] });
    const taken = refused("taken");
    expect(check(id, "slip-check", busy("b1", "2027-05-04T13:00Z", "2027-05-04T14:15Z"))).toEqual(taken);
    expect(check(id, "slip-check", busy("b1", "2027-05-04T14:45Z", "2027-05-04T15:00Z"))).toEqual(taken);
    expect(check(id, "slip-check", busy("b1", "2027-05-04T13:00Z", "2027-05-04T14:00Z")).ok).toBe(true);
    expect(check(id, "slip-check", busy("b1", "2027-05-04T15:00Z", "2027-05-04T16:00Z")).ok).toBe(true);
    expect(check(id, "slip-check", busy("b2", "2027-05-04T13:00Z", "2027-05-04T17:00Z")).ok).toBe(true);
  });

  it("on a day that is closed by then is refused, and so is any where the shop never opens", () => {
    const settings = aCalendar({ closures: [{ from: "2027-05-04", to: "2027-05-04", why: "holiday" }] });
    expect(check(idOf("b1", "2027-05-04T14:00Z"), "slip-check", { settings })).toEqual(refused("closed"));
    const never = { settings: aCalendar({ weekly: openOn("") }) };
    expect(check(idOf("b1", "2027-05-04T14:00Z"), "slip-check", never)).toEqual(refused("closed"));
  });

  it("is granted exactly where the wall clock, the lead and the free bench allow it", () => {
    fc.assert(
      fc.property(searches, fc.integer({ min: 0, max: 15 * 96 }), (search, ahead) => {
        const { settings, busy, verdict, now } = search;
        const start = Math.ceil(now / 900_000) + ahead;
        const { quanta, leadWorkingDays } = benchNeed(verdict, settings);
        const { date } = wallOfQuantum(settings.zone, start);
        const arrival = arrivalDate(settings, todayIn(settings.zone, now), leadWorkingDays);
        const allowed =
          isWithinOneOpening(settings, start, start + quanta) &&
          arrival !== null &&
          date >= arrival &&
          date <= lastDayIn(settings.zone, now) &&
          isFree(busy, "b1", start, start + quanta);
        expect(checkSlot({ settings, busy, offerId: offerId("b1", quantum(start)), verdict, now }).ok).toBe(allowed);
      }),
      { numRuns: 500 },
    );
  });
});

describe("moving or cancelling", () => {
  it("is allowed until the same time a working day before, over the week-end", () => {
    const start = at("2027-05-03T13:30Z");
    const until = at("2027-04-30T13:30Z");
    expect(changeableUntil(start, DEFAULT_CALENDAR)).toBe(until);
    expect(mayChange(start, DEFAULT_CALENDAR, until)).toBe(true);
    expect(mayChange(start, DEFAULT_CALENDAR, until + 1)).toBe(false);
  });

  it("is allowed until the start where the shop asks for no notice or has no day left before it", () => {
    const start = at("2027-05-03T13:30Z");
    expect(changeableUntil(start, aCalendar({ changeUntilWorkingDays: 0 }))).toBe(start);
    const closures = [{ from: "2026-01-01", to: "2027-05-02", why: "rebuilding" }];
    expect(changeableUntil(start, aCalendar({ closures }))).toBe(start);
  });
});
