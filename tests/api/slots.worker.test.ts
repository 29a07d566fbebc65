import { runDurableObjectAlarm } from "cloudflare:test";
import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, expect, it } from "vitest";
import { SlotsAnswer } from "#src/api/slot-bodies.ts";
import { ask, fieldsOf, jsonOf, MONDAY, setClock, WARM_UP } from "#tests/api/ask.ts";

beforeAll(...WARM_UP);
beforeEach(() => void setClock(MONDAY));

const slots = async (query: string) => SlotsAnswer.parse(await jsonOf(ask(`/api/slots?${query}`), 200));
const SHOP = () => env.SHOP.getByName("main");

it("offers bench time after the unit's arrival, soonest first, in the shop's own time", async () => {
  const { offers } = await slots("verdict=slip-check");
  expect(offers).toHaveLength(3);
  expect(offers[0]).toMatchObject({
    bench: "b1",
    benchName: "Bench 1",
    startsAt: "2027-03-05T08:00:00-05:00",
    endsAt: "2027-03-05T09:00:00-05:00",
    zone: "America/New_York",
    postBy: "2027-03-01",
  });
  expect(offers.every(({ why }) => why.endsWith("."))).toBe(true);
});

it("offers urgent jobs an earlier day", async () => {
  const { offers } = await slots("verdict=stop-riding");
  expect(offers[0]).toMatchObject({ startsAt: "2027-03-03T08:00:00-05:00", endsAt: "2027-03-03T13:00:00-05:00" });
});

it("serves a craft that is not due as a slip check", async () => {
  expect((await slots("verdict=not-due")).offers).toEqual((await slots("verdict=slip-check")).offers);
});

it("offers nothing before the day that is asked for", async () => {
  const { offers } = await slots("verdict=full-rebuild&from=2027-04-10");
  expect(offers[0]?.startsAt).toBe("2027-04-12T08:00:00-04:00");
  expect((await slots("verdict=full-rebuild&from=2099-01-01")).offers).toEqual([]);
});

it("names what is wrong with a query", async () => {
  expect(await fieldsOf(ask("/api/slots"))).toEqual(["verdict"]);
  expect(await fieldsOf(ask("/api/slots?verdict=fine&from=soon&color=red"))).toEqual(["verdict", "from", "color"]);
});

it("reads the published board, tells its age, and asks the shop where the board is old", async () => {
  expect((await slots("verdict=slip-check")).board.ageSeconds).toBe(0);
  const [offer] = (await slots("verdict=slip-check")).offers;
  await jsonOf(ask("/api/holds", { body: { slot: offer?.id, verdict: "slip-check" }, key: "board-1" }), 201);
  setClock(MONDAY + 5000);
  await runDurableObjectAlarm(SHOP());
  setClock(MONDAY + 35_000);
  const published = await slots("verdict=slip-check");
  expect(published.board.ageSeconds).toBe(30);
  expect(published.offers.map(({ id }) => id)).not.toContain(offer?.id);
  setClock(MONDAY + 66_000);
  expect((await slots("verdict=slip-check")).board.ageSeconds).toBe(0);
});

it("does without a board that cannot be read", async () => {
  await env.BOARD.put("board:main", "{}");
  expect((await slots("verdict=slip-check")).board.ageSeconds).toBe(0);
  await env.BOARD.put("board:main", "not JSON");
  expect((await slots("verdict=slip-check")).offers).toHaveLength(3);
});
