import { expect, it } from "vitest";
import { isoWithOffset } from "#shared/calendar/zone-clock.ts";
import {
  aBookingWish,
  aHoldWish,
  aLedger,
  changeSettings,
  DAY,
  rebuildAnswers,
  takenQuanta,
  urgentAnswers,
} from "#tests/ledger/a-ledger.ts";

const neverRebuilt = { when: "never", date: null, engineHours: null, slipLeftAt: null } as const;

/** Open on Sundays too, all night: the clocks change at two in the morning. */
const nightShift = [{ opens: "00:00", closes: "08:00" }];

async function aNightShop(now: number) {
  const ledger = await aLedger({ now });
  await changeSettings(ledger, (settings) => ({
    ...settings,
    calendar: { ...settings.calendar, weekly: { ...settings.calendar.weekly, 6: nightShift, 7: nightShift } },
  }));
  return ledger;
}

// New York in 2040: UTC-5 until Sunday 11 March 2:00, UTC-4 until Sunday 4 November 2:00, by the rule in force since
// 2007 (second Sunday in March, first Sunday in November).
it.each([
  {
    change: "forward",
    midnight: Date.UTC(2040, 2, 11, 5),
    startsAt: "2040-03-11T00:00:00-05:00",
    // Five hours of work: 00:00 to 02:00 and 03:00 to 06:00 on the wall.
    endsAt: "2040-03-11T06:00:00-04:00",
  },
  {
    change: "back",
    midnight: Date.UTC(2040, 10, 4, 4),
    startsAt: "2040-11-04T00:00:00-04:00",
    // Five hours of work: 00:00 to 02:00, then 01:00 to 04:00 on the wall.
    endsAt: "2040-11-04T04:00:00-05:00",
  },
])("holds and books exact time where the clocks go $change", async ({ midnight, startsAt, endsAt }) => {
  const ledger = await aNightShop(midnight - 10 * DAY);
  const hold = aHoldWish(`b1.${(midnight / 900_000).toString(36)}`, { verdict: "stop-riding" });
  const held = await ledger.hold(hold);
  if (!held.ok) throw new Error(JSON.stringify(held.refusal));
  const taken = await takenQuanta(ledger);
  expect(taken.map(({ quantum }) => quantum)).toEqual(
    Array.from({ length: 20 }, (_, count) => midnight / 900_000 + count),
  );
  const booked = await ledger.book(aBookingWish(hold.id, { answers: { ...urgentAnswers, lastRebuild: neverRebuilt } }));
  if (!booked.ok) throw new Error(booked.refusal.reason);
  const { time } = (await ledger.job(booked.value.jobNumber))!.booking;
  expect(isoWithOffset(time.zone, time.startsAt)).toBe(startsAt);
  expect(isoWithOffset(time.zone, time.endsAt)).toBe(endsAt);
  expect(time).toMatchObject({ date: startsAt.slice(0, 10), minuteOfDay: 0 });
  // What touches the end is free, what reaches over it is not.
  const after = midnight / 900_000 + 20;
  expect(await ledger.hold(aHoldWish(`b1.${(after - 1).toString(36)}`))).toMatchObject({ refusal: { why: "taken" } });
  expect(await ledger.hold(aHoldWish(`b1.${after.toString(36)}`))).toMatchObject({ ok: true });
});

it("takes no longer job into a night that has become shorter", async () => {
  const midnight = Date.UTC(2040, 2, 11, 5);
  const ledger = await aNightShop(midnight - 10 * DAY);
  // Seven hours are open; four hours from three hours after midnight are the last that fit.
  const startAfter = (hours: number) =>
    aHoldWish(`b1.${(midnight / 900_000 + hours * 4).toString(36)}`, {
      answers: { ...rebuildAnswers, lastRebuild: neverRebuilt },
    });
  expect(await ledger.hold(startAfter(3.25))).toMatchObject({ refusal: { why: "closed" } });
  expect(await ledger.hold(startAfter(3))).toMatchObject({ ok: true });
});
