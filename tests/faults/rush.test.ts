import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bookingOf, daysAhead, get, offersIn, post } from "#tests/faults/asking.ts";
import { type RunningShop, startShop } from "#tests/support/running-shop.ts";

describe("many owners at once", () => {
  let shop: RunningShop;
  beforeAll(async () => {
    shop = await startShop();
  });
  afterAll(() => shop.stop());

  it("gives a slot to one of 500, and tells the others the nearest free ones", async () => {
    const [slot] = offersIn(await get(shop.origin, `/api/slots?verdict=slip-check&from=${daysAhead(30)}`));
    const answers = await Promise.all(
      Array.from({ length: 500 }, (_, owner) =>
        post(shop.origin, "/api/holds", `rush-${owner}`, { slot: slot?.id, verdict: "slip-check" }),
      ),
    );
    const refused = answers.filter(({ status }) => status === 409);
    expect(answers.filter(({ status }) => status === 201)).toHaveLength(1);
    expect(refused).toHaveLength(499);
    for (const refusal of refused) {
      expect(offersIn(refusal).length).toBeGreaterThan(0);
      expect(offersIn(refusal).map(({ id }) => id)).not.toContain(slot?.id);
    }
  });

  it("books once where the same request comes twice at the same time, and answers both alike", async () => {
    const [slot] = offersIn(await get(shop.origin, `/api/slots?verdict=slip-check&from=${daysAhead(60)}`));
    const hold = await post(shop.origin, "/api/holds", "twice-hold", { slot: slot?.id, verdict: "slip-check" });
    const body = bookingOf(hold.body["hold"], "Twice Asked");
    const [one, other] = await Promise.all([
      post(shop.origin, "/api/bookings", "twice", body),
      post(shop.origin, "/api/bookings", "twice", body),
    ]);
    expect(one?.status).toBe(201);
    expect(other).toEqual(one);
  });

  it("refuses whoever comes with an old board, and says what is free now", async () => {
    const board = await get(shop.origin, `/api/slots?verdict=slip-check&from=${daysAhead(90)}`);
    const [slot] = offersIn(board);
    const first = await post(shop.origin, "/api/holds", "old-1", { slot: slot?.id, verdict: "slip-check" });
    const second = await post(shop.origin, "/api/holds", "old-2", { slot: slot?.id, verdict: "slip-check" });
    expect([first.status, second.status]).toEqual([201, 409]);
    const [fresh] = offersIn(second);
    const third = await post(shop.origin, "/api/holds", "old-3", { slot: fresh?.id, verdict: "slip-check" });
    expect(third.status).toBe(201);
  });
});

describe("the caps of a shop as it comes", () => {
  let shop: RunningShop;
  beforeAll(async () => {
    shop = await startShop({ vars: { REQUESTS_PER_MINUTE: "", OPEN_HOLDS_PER_SOURCE: "" } });
  });
  afterAll(() => shop.stop());

  it("lets one source hold five times at once; refused wishes do not count; then 300 requests a minute are enough", async () => {
    const statuses: number[] = [];
    for (let day = 20; statuses.length < 7; day += 4) {
      const [slot] = offersIn(await get(shop.origin, `/api/slots?verdict=slip-check&from=${daysAhead(day)}`));
      await post(shop.origin, "/api/holds", `bad-${day}`, { slot: "b9.zzz", verdict: "slip-check" });
      const held = await post(shop.origin, "/api/holds", `cap-${day}`, { slot: slot?.id, verdict: "slip-check" });
      statuses.push(held.status);
    }
    expect(statuses).toEqual([201, 201, 201, 201, 201, 429, 429]);

    const more = await Promise.all(
      Array.from({ length: 320 }, () => get(shop.origin, "/api/slots?verdict=slip-check")),
    );
    const turnedAway = more.filter(({ status }) => status === 429).length;
    expect(turnedAway).toBeGreaterThan(0);
    expect(more.length - turnedAway).toBeGreaterThan(200);
    expect((await fetch(`${shop.origin}/healthz`)).status).toBe(200);
  });
});
