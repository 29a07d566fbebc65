import * as fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import type { Slot } from "#shared/calendar/bookable.ts";
import { quantum } from "#shared/calendar/quantum.ts";
import { type ReplanCase, replan } from "#shared/calendar/replan.ts";
import { aCalendar, at, busyBetween, searches } from "#tests/calendar/a-calendar.ts";
import { isFree, isWithinOneOpening, wallOfQuantum } from "#tests/calendar/wall-clock-oracle.ts";

/** The oracle asks a date library about every quarter-hour. */
vi.setConfig({ testTimeout: 60_000 });

const ZONE = "America/New_York";

/** Monday 2027-03-01, 8:00 to 9:00 at the default shop, which opens from 8:00 to 17:00. */
function aSlot(bench: string, from: number, quanta: number): Slot {
  const { date } = wallOfQuantum(ZONE, from);
  const to = quantum(from + quanta);
  return {
    bench,
    benchName: bench,
    from: quantum(from),
    to,
    startsAt: from * 900_000,
    endsAt: to * 900_000,
    date,
    minuteOfDay: 0,
    zone: ZONE,
  };
}

const EIGHT = at("2027-03-01T08:00-05:00") / 900_000;
const slot = aSlot("b1", EIGHT, 4);
const aCase = (change: Partial<ReplanCase> = {}): ReplanCase => ({
  settings: aCalendar(),
  busy: [],
  slot,
  kept: slot,
  quanta: 16,
  now: at("2027-03-01T08:30-05:00"),
  ...change,
});
const endsAt = (iso: string) => ({ slot: { endsAt: at(iso) } });

describe("bench time for work that grew", () => {
  it("is as it is where it holds the work", () => {
    expect(replan(aCase({ quanta: 4 }))).toEqual({ kind: "as-it-is" });
  });

  it("is longer from the same start where there is room behind it", () => {
    expect(replan(aCase())).toMatchObject({ kind: "longer", ...endsAt("2027-03-01T12:00-05:00") });
  });

  it("goes to the other bench where somebody else comes next, and that is sooner", () => {
    const busy = [busyBetween("b1", "2027-03-01T11:45-05:00", "2027-03-01T17:00-05:00")];
    expect(replan(aCase({ busy }))).toMatchObject({
      kind: "later",
      slot: { bench: "b2", startsAt: at("2027-03-01T08:30-05:00") },
    });
  });

  it("is never cut by the end of a day", () => {
    const late = aSlot("b1", EIGHT + 32, 4);
    const answer = replan(aCase({ slot: late, kept: late, now: at("2027-03-01T16:15-05:00") }));
    expect(answer).toMatchObject({ kind: "later", slot: { startsAt: at("2027-03-02T08:00-05:00") } });
  });

  it("is a new one where the old one is over, however little the work", () => {
    const answer = replan(aCase({ quanta: 4, now: at("2027-03-01T09:00-05:00") }));
    expect(answer).toMatchObject({ kind: "later", slot: { startsAt: at("2027-03-01T09:00-05:00") } });
  });

  it("takes back what was given up, where it is still free", () => {
    const kept = { from: slot.from, to: quantum(slot.from + 2) };
    expect(replan(aCase({ quanta: 4, kept }))).toMatchObject({ kind: "longer", slot: { to: slot.to } });
  });

  it("leaves a bench that the shop has no more", () => {
    const gone = aSlot("b9", EIGHT, 4);
    expect(replan(aCase({ slot: gone, kept: gone }))).toMatchObject({ kind: "later", slot: { bench: "b1" } });
  });

  it("is none where the shop does not open within a year", () => {
    const closures = [{ from: "2027-03-01", to: "2028-12-31", why: "Flood" }];
    expect(replan(aCase({ settings: aCalendar({ closures }) }))).toEqual({ kind: "none" });
  });
});

describe("laws", () => {
  const cases = fc
    .record({
      search: searches,
      back: fc.integer({ min: -8, max: 8 }),
      had: fc.integer({ min: 1, max: 8 }),
      wanted: fc.integer({ min: 1, max: 24 }),
    })
    .map(({ search: { settings, busy, now }, back, had, wanted }): ReplanCase => {
      const own = aSlot("b1", Math.floor(now / 900_000) - back, had);
      const others = busy.filter(({ bench, from, to }) => bench !== "b1" || to <= own.from || from >= own.to);
      return { settings, busy: others, slot: { ...own, zone: settings.zone }, kept: own, quanta: wanted, now };
    });

  it("a new time is free, within one opening, long enough, and its end is still to come", () => {
    fc.assert(
      fc.property(cases, (it) => {
        const answer = replan(it);
        if (answer.kind === "as-it-is" || answer.kind === "none") return;
        const { bench, from, to } = answer.slot;
        expect(isFree(it.busy, bench, from, to)).toBe(true);
        expect(isWithinOneOpening(it.settings, from, to)).toBe(true);
        expect(to - from).toBeGreaterThanOrEqual(it.quanta);
        expect(to * 900_000).toBeGreaterThan(it.now);
        if (answer.kind === "longer") expect([bench, from]).toEqual([it.slot.bench, it.slot.from]);
        else expect(from * 900_000).toBeGreaterThanOrEqual(it.now);
      }),
      { numRuns: 150 },
    );
  });

  it("no time that would hold the work lies before a later one", () => {
    fc.assert(
      fc.property(cases, (it) => {
        const answer = replan(it);
        if (answer.kind !== "later") return;
        for (let start = Math.ceil(it.now / 900_000); start < answer.slot.from; start += 1) {
          if (!isWithinOneOpening(it.settings, start, start + it.quanta)) continue;
          for (const { id } of it.settings.benches) expect(isFree(it.busy, id, start, start + it.quanta)).toBe(false);
        }
      }),
      { numRuns: 80 },
    );
  });
});
