import { offerId } from "#shared/calendar/offer-id.ts";
import { type Quantum, quantum, quantumAt } from "#shared/calendar/quantum.ts";
import { DEMO_SHOP, type ShopSettings } from "#shared/shop/shop-settings.ts";

const BENCHES = 8;
const allDay = [{ opens: "00:00", closes: "24:00" }];

/** A shop with room for all that is asked of it: eight benches, never closed, any number of holds for anybody. */
export const SPEED_SHOP: ShopSettings = {
  ...DEMO_SHOP,
  calendar: {
    ...DEMO_SHOP.calendar,
    zone: "UTC",
    weekly: { 1: allDay, 2: allDay, 3: allDay, 4: allDay, 5: allDay, 6: allDay, 7: allDay },
    benches: Array.from({ length: BENCHES }, (_, index) => ({ id: `b${index}`, name: `Bench ${index}` })),
    openHoldsPerSource: 1_000_000,
  },
};

export const QUANTA_PER_JOB = 4;
const QUANTA_PER_DAY = 96;
/** Past every lead time there is. */
const FIRST_DAY = 10;

/** The hour-long slots from ten days on, one after another on every bench. */
export const slotOf = (index: number, now: number): string =>
  offerId(`b${index % BENCHES}`, quantum(dayFrom(now, FIRST_DAY) + Math.floor(index / BENCHES) * QUANTA_PER_JOB));

/** Where in the calendar the n-th booking of a long history lies, in SQL over `n`. */
export function historySlots(past: number, now: number): { readonly bench: string; readonly from: string } {
  const isPast = `n < ${past}`;
  const hoursAgo = `(${past} - n + ${BENCHES - 1}) / ${BENCHES} * ${QUANTA_PER_JOB}`;
  const daysAhead = `(n - ${past}) / ${BENCHES} * ${QUANTA_PER_DAY}`;
  return {
    bench: `'b' || (n % ${BENCHES})`,
    from: `CASE WHEN ${isPast} THEN ${dayFrom(now, 0)} - ${hoursAgo} ELSE ${dayFrom(now, COMING_FROM_DAY)} + ${daysAhead} END`,
  };
}

/** Behind the slots that are raced for, and enough days before the year is over. */
const COMING_FROM_DAY = 100;
/** One booking a day on every bench. */
export const COMING = 250 * BENCHES;

const dayFrom = (now: number, days: number): Quantum =>
  quantum(Math.floor(quantumAt(now) / QUANTA_PER_DAY) * QUANTA_PER_DAY + days * QUANTA_PER_DAY);
