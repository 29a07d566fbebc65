import { afterAll, beforeAll, expect, it } from "vitest";
import { RECEIVED_OFF_TIME } from "#shared/messages/shop-change-words.ts";
import { MOVE_WORDS } from "#shared/messages/shop-move-words.ts";
import { RECEIVE, RECEIVE_PROBLEM } from "#shared/messages/shop-receive-words.ts";
import { aJob, someAnswers } from "#tests/bench/a-job.ts";
import {
  Browser,
  fieldValue,
  HERE,
  MINUTE,
  MONDAY,
  type Page,
  setClock,
  signedIn,
  WARM_UP,
  wordsOf,
} from "#tests/bench/the-shop.ts";

let staff: Browser;
beforeAll(...WARM_UP);
beforeAll(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});
afterAll(() => setClock(MONDAY));

const DAY = 24 * 60 * MINUTE;
const find = (number: string) => staff.get(`/shop/receive/find?number=${encodeURIComponent(number)}`);
const receive = (number: string, note = "") => staff.post(`/shop/receive/${number}`, { note });

it("finds a job by its number or by its tag's code, and says which slip it was", async () => {
  const { number } = await aJob();
  for (const text of [number, number.toLowerCase(), `${HERE}/job/${number}`])
    expect((await find(text)).path, text).toBe(`/shop/receive/${number}`);
  const problems = [
    ["%%%", 422, "not-a-job-number"],
    ["https://other.example/job/16JD", 422, "other-site"],
    ["16JE", 422, "check-symbol-wrong"],
    ["16JD", 404, "no-such-job"],
  ] as const;
  for (const [typed, status, problem] of problems) {
    const page = await find(typed);
    expect(page.status, typed).toBe(status);
    expect(wordsOf(page)).toContain(RECEIVE_PROBLEM[problem]);
    expect(fieldValue(page, "number")).toBe(typed);
  }
  const [first = "", second = "", ...rest] = number;
  const swapped = await find([second, first, ...rest].join(""));
  expect(swapped.text).toContain(`href="/shop/receive/${number}"`);
});

it("takes whoever of the shop opens the code with a phone's own camera to the parcel, and nobody else", async () => {
  const { number } = await aJob();
  expect((await staff.get(`/job/${number}`)).path).toBe(`/shop/receive/${number}`);
  const stranger = await new Browser().get(`/job/${number}`);
  expect([stranger.path, stranger.status]).toEqual([`/job/${number}`, 200]);
  expect(wordsOf(stranger)).not.toContain("Wren");
});

it("shows what is in the parcel, receives it once, and keeps the remark", async () => {
  const { number } = await aJob();
  const page = await staff.get(`/shop/receive/${number}`);
  for (const words of ["Wren Calloway", RECEIVE.isEarly, "Thread locker", "Ridden Gently"])
    expect(wordsOf(page)).toContain(words);
  await receive(number, "Box was wet");
  const again = await receive(number, "Box was wet");
  const job = await staff.get(`/shop/jobs/${number}`);
  expect(wordsOf(job)).toContain("State: Received");
  expect(wordsOf(job).match(/Shop, Manager Received Box was wet/g)).toHaveLength(1);
  expect(again.status).toBe(200);
  // The tag of a unit that is here leads to its job.
  expect((await find(number)).path).toBe(`/shop/jobs/${number}`);
});

it("offers new bench time at once where a parcel is late", async () => {
  const { number } = await aJob();
  setClock(MONDAY + 14 * DAY);
  staff = await signedIn();
  expect(wordsOf(await staff.get(`/shop/receive/${number}`))).toContain(RECEIVE.isLate);
  const page = await receive(number);
  expect(page.path).toBe(`/shop/jobs/${number}/move?received=late`);
  expect(wordsOf(page)).toContain(RECEIVED_OFF_TIME.late);
  expect(wordsOf(page)).toContain("tell Wren Calloway the new one: +12025550143");
  // Monday the 15th, ten in New York: work may begin within the quarter-hour.
  expect(wordsOf(page)).toContain("Mon, Mar 15, 2027, 11:00 AM EDT");
  const moved = await staff.post(`/shop/jobs/${number}/move`, { offer: offerIn(page) });
  expect(wordsOf(moved)).toContain("Bench time Mon, Mar 15, 2027");
  setClock(MONDAY);
  staff = await signedIn();
});

it("offers a unit that came early to go on a bench sooner, and lets it keep its time", async () => {
  const { number } = await aJob({ offer: 2 });
  const page = await receive(number);
  expect(page.path).toBe(`/shop/jobs/${number}/move?received=early`);
  expect(wordsOf(page)).toContain(RECEIVED_OFF_TIME.early);
  expect(page.text).toContain(`href="/shop/jobs/${number}?done=receive"`);
  const kept = await staff.get(`/shop/jobs/${number}?done=receive`);
  expect(wordsOf(kept)).toContain(MOVE_WORDS.receive.done);
});

it("has a way in for a parcel that nobody booked, with hardly an answer", async () => {
  const start = await staff.get("/shop/book?here");
  expect(wordsOf(start)).toContain("Book in a unit that is here");
  const verdict = await staff.post("/shop/book?here", { ...asItStands(start), "symptoms.notLooked": "yes" });
  expect(verdict.path).toMatch(/^\/shop\/book\/[^/?]+\?here$/);
  const call = verdict.path.split("?")[0];
  const held = await staff.post(`${call}/hold?here`, {
    offer: offerIn(verdict),
    wish: fieldValue(verdict, "wish"),
  });
  expect(held.path).toBe(`${call}?here`);
  // Today: nothing has to be posted.
  expect(wordsOf(held)).toContain("Mon, Mar 1, 2027");
  const booked = await staff.post(`${call}/confirm?here`, {
    hold: fieldValue(held, "hold"),
    wish: fieldValue(held, "wish"),
    name: "Tansy Marl",
    phone: "202-555-0156",
    collect: "yes",
  });
  const number = /\/shop\/jobs\/(\w+)\/link/.exec(booked.path)?.[1] ?? "";
  const job = wordsOf(await staff.get(`/shop/jobs/${number}`));
  expect(job).toContain("State: Received");
  expect(job).toMatch(/Shop, Manager Booked .*Shop, Manager Received/);
});

it("books a unit in again that came though its job was cancelled, with what is known of it", async () => {
  const { number } = await aJob({ answers: someAnswers({ symptoms: ["whine"] }), serial: "SN-77" });
  await staff.post(`/shop/jobs/${number}/cancel`);
  const page = await find(number);
  expect(wordsOf(page)).toContain(RECEIVE.cancelledTitle(number));
  const address = `/shop/book?here&again=${number}`;
  expect(page.text).toContain(`href="${address.replace("&", "&amp;")}"`);
  const form = await staff.get(address);
  expect(asItStands(form)).toMatchObject({
    "symptoms.choice": "whine",
    "unitFamily.choice": "set-nut",
    "engineHours.value": "50",
    "lastRebuild.when": "known",
    "lastRebuild.hours": "20",
  });
  const verdict = await staff.post(address, asItStands(form));
  const call = verdict.path.split("?")[0];
  const held = await staff.post(`${call}/hold?here&again=${number}`, {
    offer: offerIn(verdict),
    wish: fieldValue(verdict, "wish"),
  });
  expect(["name", "phone", "email", "line1", "serial"].map((field) => fieldValue(held, field))).toEqual([
    "Wren Calloway",
    "+12025550143",
    "wren@shore.example",
    "7 Heron Quay",
    "SN-77",
  ]);
});

it("allows the camera on the page that scans, and on no other", async () => {
  const { number } = await aJob();
  const policy = async (path: string) => (await staff.get(path)).headers.get("permissions-policy") ?? "";
  expect(await policy("/shop/receive")).toContain("camera=(self)");
  expect(await policy("/shop/receive/find?number=fish")).toContain("camera=(self)");
  for (const path of ["/shop", "/", `/shop/receive/${number}`, `/shop/jobs/${number}`, `/job/${number}`])
    expect(await policy(path), path).toContain("camera=(),");
});

const offerIn = ({ text }: Page): string => /name="offer" value="([^"]+)"/.exec(text)?.[1] ?? "";

/** A form as a browser would send it if nobody touched it. */
function asItStands({ text }: Page): Record<string, string> {
  const attribute = (tag: string, name: string) => new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? "";
  const selects = [...text.matchAll(/<select\b[^>]*>.*?<\/select>/gs)].map(([select]) => {
    const option = /<option\b[^>]*\bselected[^>]*>/.exec(select)?.[0] ?? "";
    return [attribute(select, "name"), attribute(option, "value")] as const;
  });
  const inputs = [...text.matchAll(/<input\b[^>]*>/g)]
    .map(([tag]) => tag)
    .filter((tag) => !tag.includes('type="checkbox"') || /\bchecked/.test(tag))
    .map((tag) => [attribute(tag, "name"), attribute(tag, "value")] as const);
  return Object.fromEntries([...selects, ...inputs]);
}
