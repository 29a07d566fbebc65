import * as fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { benchNeed } from "#shared/calendar/bench-job.ts";
import { checkSlot } from "#shared/calendar/bookable.ts";
import type { BusySpan } from "#shared/calendar/busy-span.ts";
import { DEFAULT_CALENDAR } from "#shared/calendar/calendar-settings.ts";
import { findOffers, nearestOffers, type OfferSearch } from "#shared/calendar/find-offers.ts";
import { dayNumber } from "#shared/units/calendar-date.ts";
import { aCalendar, at, busyBetween, openOn, searches, sorted } from "#tests/calendar/a-calendar.ts";
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

/** Every start that the rules allow, found by trying each quarter-hour of a stretch of days on each bench. */
function* allStarts(search: OfferSearch, until: number): Generator<{ bench: string; start: number; date: string }> {
  const { settings, busy, verdict, now } = search;
  const { quanta, leadWorkingDays } = benchNeed(verdict, settings);
  const arrival = arrivalDate(settings, todayIn(settings.zone, now), leadWorkingDays);
  if (arrival === null) return;
  const earliest = search.from !== undefined && search.from > arrival ? search.from : arrival;
  const lastDate = lastDayIn(settings.zone, now);
  for (let start = Math.ceil(now / 900_000); start <= until; start += 1) {
    const { date } = wallOfQuantum(settings.zone, start);
    if (date < earliest || date > lastDate || !isWithinOneOpening(settings, start, start + quanta)) continue;
    for (const { id } of settings.benches) {
      if (isFree(busy, id, start, start + quanta)) yield { bench: id, start, date };
    }
  }
}

const DAY_QUANTA = 96;

describe("every offer", () => {
  it("lies within one opening, on a free bench, after the unit's arrival and never before the wished-for day", () => {
    fc.assert(
      fc.property(searches, (search) => {
        const { settings, busy, verdict, now, from = "" } = search;
        const { quanta, leadWorkingDays } = benchNeed(verdict, settings);
        for (const { bench, start, end, date } of findOffers(search)) {
          expect(end - start).toBe(quanta);
          expect(isFree(busy, bench, start, end)).toBe(true);
          expect(isWithinOneOpening(settings, start, end)).toBe(true);
          expect(wallOfQuantum(settings.zone, start).date).toBe(date);
          expect(date >= arrivalDate(settings, todayIn(settings.zone, now), leadWorkingDays)!).toBe(true);
          expect(date >= from).toBe(true);
          expect(start * 900_000).toBeGreaterThanOrEqual(now);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("may be booked as it stands", () => {
    fc.assert(
      fc.property(searches, (search) => {
        for (const offer of findOffers(search)) {
          const slot = checkSlot({ ...search, offerId: offer.id });
          expect(slot).toMatchObject({
            ok: true,
            value: { bench: offer.bench, from: offer.start, to: offer.end, date: offer.date, zone: offer.zone },
          });
          if (!slot.ok) continue;
          expect([slot.value.startsAt, slot.value.endsAt]).toEqual([at(offer.startsAt), at(offer.endsAt)]);
        }
      }),
    );
  });

  it("reaches the bench in time when it is posted on the last day that the offer names", () => {
    fc.assert(
      fc.property(searches, (search) => {
        const { settings, verdict, now } = search;
        const { leadWorkingDays } = benchNeed(verdict, settings);
        for (const { postBy, date } of findOffers(search)) {
          expect(postBy >= todayIn(settings.zone, now)).toBe(true);
          expect(arrivalDate(settings, postBy, leadWorkingDays)! <= date).toBe(true);
        }
      }),
    );
  });
});

describe("the offers together", () => {
  it("begin with the soonest start there is", () => {
    fc.assert(
      fc.property(searches, (search) => {
        const [soonest] = findOffers(search);
        const [first] = allStarts(search, soonest!.start);
        expect({ bench: soonest!.bench, start: soonest!.start }).toEqual({ bench: first!.bench, start: first!.start });
        expect(soonest!.reason).toBe("soonest");
      }),
      { numRuns: 150 },
    );
  });

  it("are as many as there are days or starts in the window, up to three, on as many days as there are", () => {
    fc.assert(
      fc.property(searches, (search) => {
        const offers = findOffers(search);
        const soonest = offers[0]!;
        const windowDays = search.settings.offerWindowDays;
        const lastDay = dayNumber(soonest.date) + windowDays;
        const starts = [...allStarts(search, soonest.start + (windowDays + 2) * DAY_QUANTA)];
        const inWindow = starts.filter(({ date }) => dayNumber(date) <= lastDay);
        const days = new Set(inWindow.map(({ date }) => date));
        expect(new Set(offers.map(({ date }) => date)).size).toBe(Math.min(3, days.size));
        expect(Math.max(...offers.map(({ date }) => dayNumber(date)))).toBeLessThanOrEqual(lastDay);
        expect(offers.map(({ start }) => start)).toEqual(offers.map(({ start }) => start).sort((a, b) => a - b));
        const laterThatDay = inWindow.filter(({ date, start }) => date === soonest.date && start >= soonest.end);
        if (offers.length < 3)
          expect(days.size).toBe(offers.filter(({ reason }) => reason !== "later-that-day").length);
        if (offers.length < 2) expect(laterThatDay).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it("say truly how they lie to the soonest", () => {
    fc.assert(
      fc.property(searches, (search) => {
        const [soonest, ...others] = findOffers(search);
        for (const { date, reason, start } of others) {
          const days = dayNumber(date) - dayNumber(soonest!.date);
          expect(reason).toBe(days === 0 ? "later-that-day" : days < 7 ? "some-days-later" : "a-week-or-more-later");
          expect(start).toBeGreaterThanOrEqual(soonest!.end);
        }
      }),
    );
  });

  it("do not depend on how busy time is cut into jobs", () => {
    fc.assert(
      fc.property(searches, (search) => {
        const quarters: BusySpan[] = search.busy.flatMap(({ bench, from, to }) =>
          Array.from({ length: to - from }, (_, index) => ({
            bench,
            from: (from + index) as BusySpan["from"],
            to: (from + index + 1) as BusySpan["to"],
          })),
        );
        expect(findOffers({ ...search, busy: sorted(quarters) })).toEqual(findOffers(search));
      }),
    );
  });
});

/** Monday 2027-04-26, 10:00 in New York. */
const monday = at("2027-04-26T14:00Z");
const shortly = (search: Partial<OfferSearch>) =>
  findOffers({ settings: DEFAULT_CALENDAR, busy: [], verdict: "slip-check", now: monday, ...search }).map(
    ({ bench, startsAt, endsAt, reason, postBy }) => [bench, startsAt.slice(0, 16), endsAt.slice(11), reason, postBy],
  );
const bothBenches = (from: string, to: string) => ["b1", "b2"].map((bench) => busyBetween(bench, from, to));

describe("an empty shop", () => {
  it("offers the day of arrival, two open days on and a week on", () => {
    expect(shortly({})).toEqual([
      ["b1", "2027-04-30T08:00", "09:00:00-04:00", "soonest", "2027-04-26"],
      ["b1", "2027-05-04T08:00", "09:00:00-04:00", "some-days-later", "2027-04-28"],
      ["b1", "2027-05-07T08:00", "09:00:00-04:00", "a-week-or-more-later", "2027-05-03"],
    ]);
  });

  it("expects an urgent unit by express and gives it the longer time", () => {
    expect(shortly({ verdict: "stop-riding" })[0]).toEqual([
      "b1",
      "2027-04-28T08:00",
      "13:00:00-04:00",
      "soonest",
      "2027-04-26",
    ]);
  });

  it("treats a craft that is not due as a slip check", () => {
    expect(shortly({ verdict: "not-due" })).toEqual(shortly({ verdict: "slip-check" }));
  });

  it("counts a unit that is posted on a Saturday from the Monday", () => {
    expect(shortly({ now: at("2027-05-01T16:00Z") })[0]?.[1]).toBe("2027-05-07T08:00");
  });

  it("knows that in the shop it is still yesterday", () => {
    expect(shortly({ now: at("2027-04-28T03:59Z") })[0]?.[1]).toBe("2027-05-03T08:00");
    expect(shortly({ now: at("2027-04-28T04:00Z") })[0]?.[1]).toBe("2027-05-04T08:00");
  });

  it("offers what is left of today where units are brought in without a lead", () => {
    const settings = aCalendar({ leadWorkingDays: { standard: 0, urgent: 0 } });
    expect(shortly({ settings, now: monday + 1 })[0]?.[1]).toBe("2027-04-26T10:15");
    expect(shortly({ settings, now: at("2027-04-26T20:15Z") })[0]?.[1]).toBe("2027-04-27T08:00");
  });
});

describe("a busy shop", () => {
  it("uses the bench that is free first", () => {
    const busy = [busyBetween("b1", "2027-04-30T12:00Z", "2027-04-30T14:00Z")];
    expect(shortly({ busy })[0]?.slice(0, 2)).toEqual(["b2", "2027-04-30T08:00"]);
  });

  it("fits a job exactly into a gap and not into one a quarter-hour shorter", () => {
    const gap = (until: string) => [
      ...bothBenches("2027-04-30T12:00Z", "2027-04-30T15:00Z"),
      ...bothBenches(until, "2027-05-20T21:00Z"),
    ];
    expect(shortly({ busy: gap("2027-04-30T16:00Z") })[0]?.[1]).toBe("2027-04-30T11:00");
    expect(shortly({ busy: gap("2027-04-30T15:45Z") })[0]?.[1]).toBe("2027-05-21T08:00");
  });

  it("offers the soonest even where it lies far ahead", () => {
    const busy = bothBenches("2027-04-01T00:00Z", "2028-03-01T00:00Z");
    expect(shortly({ busy })[0]?.[1]).toBe("2028-03-01T08:00");
  });

  it("offers the last day of a year and nothing beyond", () => {
    const busy = bothBenches("2027-04-01T00:00Z", "2028-04-25T00:00Z");
    expect(new Set(shortly({ busy }).map((offer) => offer[1]?.slice(0, 10)))).toEqual(new Set(["2028-04-25"]));
    expect(shortly({ busy: bothBenches("2027-04-01T00:00Z", "2028-04-26T00:00Z") })).toEqual([]);
  });

  it("offers later the same day only where no other day in the window has room", () => {
    const busy = bothBenches("2027-05-01T00:00Z", "2027-06-01T00:00Z");
    expect(shortly({ busy }).map((offer) => [offer[1], offer[3]])).toEqual([
      ["2027-04-30T08:00", "soonest"],
      ["2027-04-30T09:00", "later-that-day"],
      ["2027-04-30T10:00", "later-that-day"],
    ]);
  });

  it("spreads the offers over a window of less than a week too", () => {
    expect(shortly({ settings: aCalendar({ offerWindowDays: 6 }) }).map((offer) => offer[1])).toEqual([
      "2027-04-30T08:00",
      "2027-05-04T08:00",
      "2027-05-06T08:00",
    ]);
  });

  it("offers the next day where the days after it are full", () => {
    const busy = [...bothBenches("2027-05-04T00:00Z", "2027-06-01T00:00Z")];
    expect(shortly({ busy }).map((offer) => offer[1])).toEqual([
      "2027-04-30T08:00",
      "2027-04-30T09:00",
      "2027-05-03T08:00",
    ]);
  });

  it("never offers a job across the lunch break or past closing", () => {
    const settings = aCalendar({ weekly: openOn("12345", ["08:00", "12:00"], ["13:00", "18:00"]) });
    const busy = bothBenches("2027-04-30T12:00Z", "2027-04-30T12:15Z");
    expect(shortly({ settings, busy, verdict: "full-rebuild" })[0]?.[1]).toBe("2027-04-30T13:00");
  });
});

describe("a shop that never opens", () => {
  it("offers nothing", () => {
    expect(shortly({ settings: aCalendar({ weekly: openOn("") }) })).toEqual([]);
    const closures = [{ from: "2027-01-01", to: "2029-01-01", why: "rebuilding" }];
    expect(shortly({ settings: aCalendar({ closures }) })).toEqual([]);
  });
});

describe("fresh offers after a refusal", () => {
  const search = { settings: DEFAULT_CALENDAR, busy: [], verdict: "slip-check", now: monday } as const;

  it("begin with the wished-for day", () => {
    expect(nearestOffers(search, "2027-06-09")[0]?.date).toBe("2027-06-09");
  });

  it("fall back to the soonest where nothing is left after it", () => {
    expect(nearestOffers(search, "2029-01-01")).toEqual(findOffers(search));
  });
});
