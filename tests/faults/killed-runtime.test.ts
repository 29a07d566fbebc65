import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Answered, bookingOf, daysAhead, get, offersIn, post } from "#tests/faults/asking.ts";
import { type RunningShop, startShop } from "#tests/support/running-shop.ts";
import { until } from "#tests/support/until.ts";

const OWNERS = 6;
const BOOKINGS_EACH = 6;
/** Each owner books in weeks of their own, so that nobody is refused for another's sake. */
const DAYS_APART = 21;

describe("a runtime killed in a stream of bookings", () => {
  let shop: RunningShop;
  beforeAll(async () => {
    shop = await startShop();
  });
  afterAll(() => shop.stop());

  it("keeps every booking that it acknowledged, and books none twice", async () => {
    const acknowledged: Answered[] = [];
    const streams = Array.from({ length: OWNERS }, (_, owner) => stream(shop.origin, owner, acknowledged));
    for (const share of [1 / 6, 3 / 6]) {
      await until(() => acknowledged.length >= OWNERS * BOOKINGS_EACH * share, 90_000);
      await shop.killRuntime();
      await shop.untilUp();
    }
    await Promise.all(streams);

    expect(acknowledged).toHaveLength(OWNERS * BOOKINGS_EACH);
    const receipts = await Promise.all(
      acknowledged.map(({ body }) => get(shop.origin, `/api/bookings/${String(body["booking"])}`)),
    );
    expect(receipts.map(({ body }) => body["state"])).toEqual(receipts.map(() => "booked"));
    const times = receipts.map(({ body }) => `${String(body["bench"])} ${String(body["startsAt"])}`);
    expect(new Set(times).size).toBe(times.length);
    expect(await jobsAtTheShop(shop)).toEqual(new Set(acknowledged.map(({ body }) => String(body["jobNumber"]))));
  });
});

/** One owner's wishes, one after the other; each is repeated with its key until the shop answers. */
async function stream(origin: string, owner: number, acknowledged: Answered[]): Promise<void> {
  for (let nth = 0; nth < BOOKINGS_EACH; nth += 1) {
    const name = `owner-${owner}-${nth}`;
    const from = daysAhead(14 + owner * DAYS_APART);
    const slots = await insist(() => get(origin, `/api/slots?verdict=slip-check&from=${from}`));
    let hold = await insist(() => post(origin, "/api/holds", `hold-${name}`, wish(offersIn(slots)[0]?.id)));
    // The published board may be older than this owner's last booking; the refusal brings fresh offers.
    if (hold.status === 409) {
      const [fresh] = offersIn(hold);
      hold = await insist(() => post(origin, "/api/holds", `again-${name}`, wish(fresh?.id)));
    }
    expect(hold.status).toBe(201);
    const booked = await insist(() =>
      post(origin, "/api/bookings", `book-${name}`, bookingOf(hold.body["hold"], name)),
    );
    expect(booked.status).toBe(201);
    acknowledged.push(booked);
  }
}

const wish = (slot: string | undefined) => ({ slot, verdict: "slip-check" });

/** As a patient client does: no answer and a failure are asked again, a refusal is an answer. */
async function insist(ask: () => Promise<Answered>): Promise<Answered> {
  let answer = await ask();
  await until(async () => {
    if (answer.status !== 0 && answer.status < 500) return true;
    answer = await ask();
    return false;
  }, 60_000);
  return answer;
}

/** The numbers of all jobs that the shop's own list shows. */
async function jobsAtTheShop({ origin, signInLink }: RunningShop): Promise<Set<string>> {
  const signedIn = await fetch(signInLink, { method: "POST", redirect: "manual" });
  const cookie = (signedIn.headers.get("set-cookie") ?? "").split(";")[0] ?? "";
  const page = await (await fetch(`${origin}/shop/arrivals`, { headers: { cookie } })).text();
  return new Set([...page.matchAll(/\/shop\/jobs\/([0-9A-Z]+)/g)].map(([, number]) => String(number)));
}
