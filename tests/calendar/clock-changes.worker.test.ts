import { describe, expect, it } from "vitest";
import { checkSlot } from "#shared/calendar/bookable.ts";
import type { CalendarSettings } from "#shared/calendar/calendar-settings.ts";
import { changeableUntil } from "#shared/calendar/changeable.ts";
import { findOffers } from "#shared/calendar/find-offers.ts";
import { offerId } from "#shared/calendar/offer-id.ts";
import { quantum } from "#shared/calendar/quantum.ts";
import { aCalendar, at, openOn } from "#tests/calendar/a-calendar.ts";

/** A shop that works on Sundays, when the clocks change, and asks for no lead. */
const sundays = (opens: string, closes: string, zone = "America/New_York"): CalendarSettings =>
  aCalendar({
    zone,
    weekly: openOn("67", [opens, closes]),
    leadWorkingDays: { standard: 0, urgent: 0 },
    minutes: { "slip-check": 60, "full-rebuild": 240, "stop-riding": 300 },
    benches: [{ id: "b1", name: "Bench 1" }],
  });

const rebuilds = (settings: CalendarSettings, from: string) =>
  findOffers({ settings, busy: [], verdict: "full-rebuild", now: at(`${from}T00:00Z`), from });

describe("a four-hour job on a day on which the clocks change", () => {
  it.each([
    ["spring", "2027-03-14", "08:00", "2027-03-14T08:00:00-04:00", "2027-03-14T12:00:00-04:00"],
    ["autumn", "2026-11-01", "08:00", "2026-11-01T08:00:00-05:00", "2026-11-01T12:00:00-05:00"],
    ["spring, through the night", "2027-03-14", "00:00", "2027-03-14T00:00:00-05:00", "2027-03-14T05:00:00-04:00"],
    ["autumn, through the night", "2026-11-01", "00:00", "2026-11-01T00:00:00-04:00", "2026-11-01T03:00:00-05:00"],
  ])("%s: starts when the shop opens by the wall clock and takes 16 quarter-hours", (_, date, opens, start, end) => {
    const [offer] = rebuilds(sundays(opens, "17:00"), date);
    expect([offer?.startsAt, offer?.endsAt]).toEqual([start, end]);
    expect(offer!.end - offer!.start).toBe(16);
    expect(at(offer!.endsAt) - at(offer!.startsAt)).toBe(4 * 3_600_000);
  });

  it("does not fit into four hours of wall time of which one is skipped", () => {
    expect(rebuilds(sundays("01:00", "05:00"), "2027-03-14")[0]?.date).toBe("2027-03-20");
  });

  it("fits into three hours of wall time of which one comes twice", () => {
    expect(rebuilds(sundays("00:00", "03:00"), "2026-11-01")[0]?.startsAt).toBe("2026-11-01T00:00:00-04:00");
    expect(rebuilds(sundays("00:00", "03:00"), "2026-11-02")).toEqual([]);
  });

  it("keeps to half-hour shifts", () => {
    const settings = sundays("01:00", "04:30", "Australia/Lord_Howe");
    expect(rebuilds(settings, "2027-04-03").map(({ startsAt }) => startsAt)).toEqual(["2027-04-04T01:00:00+11:00"]);
  });

  it("has nothing to offer in an opening that is skipped whole", () => {
    expect(
      findOffers({
        settings: sundays("02:00", "03:00"),
        busy: [],
        verdict: "slip-check",
        now: at("2027-03-14T00:00Z"),
        from: "2027-03-14",
      })[0]?.date,
    ).toBe("2027-03-20");
  });

  it("may be booked in either of the hours that come twice, as two different times", () => {
    const settings = sundays("00:00", "08:00");
    const book = (start: string) =>
      checkSlot({
        settings,
        busy: [],
        offerId: offerId("b1", quantum(at(start) / 900_000)),
        verdict: "slip-check",
        now: at("2026-10-31T12:00Z"),
      });
    const first = book("2026-11-01T05:30Z");
    const second = book("2026-11-01T06:30Z");
    expect([first, second]).toMatchObject([
      { ok: true, value: { date: "2026-11-01", minuteOfDay: 90, startsAt: at("2026-11-01T05:30Z") } },
      { ok: true, value: { date: "2026-11-01", minuteOfDay: 90, startsAt: at("2026-11-01T06:30Z") } },
    ]);
  });
});

describe("the last moment to change a booking", () => {
  it.each([
    ["spring", "2027-03-14T13:00Z", "2027-03-13T14:00Z"],
    ["autumn", "2026-11-01T14:00Z", "2026-10-31T13:00Z"],
  ])("%s: is the same time on the wall a working day before, 23 or 25 hours", (_, start, until) => {
    expect(changeableUntil(at(start), sundays("08:00", "17:00"))).toBe(at(until));
  });
});
