import * as fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { boardFrom, busyOf, SlotBoardSchema } from "#shared/calendar/board-schema.ts";
import { findOffers } from "#shared/calendar/find-offers.ts";
import { plusDays } from "#shared/units/calendar-date.ts";
import { aCalendar, at, busyBetween, searches } from "#tests/calendar/a-calendar.ts";

/** Hundreds of shops are searched for a year, which takes its time on a busy machine. */
vi.setConfig({ testTimeout: 60_000 });

const throughKv = (board: unknown) => SlotBoardSchema.parse(JSON.parse(JSON.stringify(board)));

describe("the published slot board", () => {
  it("leads to the same offers as the ledger that made it", () => {
    fc.assert(
      fc.property(searches, (search) => {
        const board = throughKv(boardFrom({ ...search, version: 7 }));
        expect(findOffers({ ...search, settings: board.settings, busy: busyOf(board) })).toEqual(findOffers(search));
      }),
      { numRuns: 200 },
    );
  });

  it("leads, when it is read later, to no offer that its ledger would not have made", () => {
    fc.assert(
      fc.property(searches, fc.integer({ min: 0, max: 400 }), (search, days) => {
        const board = throughKv(boardFrom({ ...search, version: 7 }));
        const later = search.now + days * 86_400_000;
        const offers = findOffers({ ...search, now: later, busy: busyOf(board) });
        expect(offers.filter(({ date }) => date > board.until)).toEqual([]);
        const [stillKnown] = findOffers({ ...search, now: later });
        if (stillKnown !== undefined && stillKnown.date <= board.until) expect(offers[0]).toEqual(stillKnown);
      }),
    );
  });

  it("tells when benches are busy, and neither how many jobs there are nor why the shop is closed", () => {
    const board = boardFrom({
      version: 1,
      now: at("2027-05-03T12:00Z"),
      settings: aCalendar({ closures: [{ from: "2027-06-01", to: "2027-06-04", why: "a private matter" }] }),
      busy: [
        busyBetween("b1", "2027-05-01T12:00Z", "2027-05-01T13:00Z"),
        busyBetween("b1", "2027-05-03T11:00Z", "2027-05-03T13:00Z"),
        busyBetween("b2", "2027-05-03T13:00Z", "2027-05-03T14:00Z"),
        busyBetween("b1", "2027-05-04T12:00Z", "2027-05-04T13:00Z"),
        busyBetween("b1", "2027-05-04T13:00Z", "2027-05-04T17:00Z"),
      ],
    });
    expect(board).toMatchObject({
      version: 1,
      generatedAt: at("2027-05-03T12:00Z"),
      busy: { b1: [0, 4, 23 * 4, 5 * 4], b2: [4, 4] },
      until: plusDays("2027-05-03", 365),
    });
    expect(JSON.stringify(board)).not.toContain("private");
    const starts = busyOf(board).map(({ from }) => from);
    expect(starts).toEqual([...starts].sort((one, other) => one - other));
  });

  it("is refused where its numbers make no sense", () => {
    const board = boardFrom({ version: 1, now: at("2027-05-03T12:00Z"), settings: aCalendar(), busy: [] });
    expect(SlotBoardSchema.safeParse({ ...board, busy: { b1: [-1, 2] } }).success).toBe(false);
    expect(SlotBoardSchema.safeParse({ ...board, busy: { b1: [1] } }).success).toBe(false);
    expect(SlotBoardSchema.safeParse({ ...board, owner: "somebody" }).success).toBe(false);
  });
});
