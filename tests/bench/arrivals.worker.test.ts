import { beforeAll, beforeEach, expect, it } from "vitest";
import { aJob, someAnswers } from "#tests/bench/a-job.ts";
import {
  type Browser,
  MINUTE,
  MONDAY,
  type Page,
  setClock,
  signedIn,
  WARM_UP,
  wordsOf,
} from "#tests/bench/the-shop.ts";

const DAY = 24 * 60 * MINUTE;
let staff: Browser;

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});

const numbersOn = ({ text }: Page) => [...text.matchAll(/href="\/shop\/jobs\/(\w+)"/g)].map(([, number]) => number);

it("says so where nothing is booked yet", async () => {
  expect(wordsOf(await staff.get("/shop/arrivals"))).toContain("Nothing is booked yet");
});

it("lists urgent jobs first, each part by bench time, whatever came in when", async () => {
  const later = await aJob({ offer: 2 });
  const check = await aJob();
  const urgentLater = await aJob({ answers: someAnswers({ symptoms: ["grinding"] }), offer: 1 });
  const urgent = await aJob({ answers: someAnswers({ symptoms: ["metal-in-oil"] }) });
  const rebuild = await aJob({ answers: someAnswers({ symptoms: ["whine"] }), offer: 1 });

  const page = await staff.get("/shop/arrivals");
  expect(numbersOn(page).slice(0, 3)).toEqual([urgent, urgentLater, check].map(({ number }) => number));
  expect(numbersOn(page).slice(3).toSorted()).toEqual([rebuild, later].map(({ number }) => number).toSorted());
  expect(wordsOf(page)).toContain(
    `${check.number} Fri, Mar 5, 2027 8:00 AM to 9:00 AM Slip check Wren Calloway Bench 1 Mon, Mar 1, 2027 Booked`,
  );
  expect(wordsOf(page)).toMatch(/Urgent: do not ride \(2\).*This week \(1\).*Next week/);
});

it("keeps a job on the list after its bench time, apart from what still comes", async () => {
  const { number } = await aJob();
  setClock(MONDAY + 10 * DAY);
  staff = await signedIn();
  const [, passed = ""] = wordsOf(await staff.get("/shop/arrivals")).split("Bench time has passed");
  expect(passed).toContain(number);
});

it("finds a job by its number, however it is typed", async () => {
  const { number } = await aJob();
  const typed = `${number.slice(0, 2)}-${number.slice(2)}`.toLowerCase();
  for (const text of [number, typed, ` ${number} `, number.replaceAll("0", "o").replaceAll("1", "l")]) {
    const page = await staff.get(`/shop/find?number=${encodeURIComponent(text)}`);
    expect(page).toMatchObject({ status: 200, path: `/shop/jobs/${number}` });
  }
});

it("catches a mistyped number by its check symbol, and says so", async () => {
  const { number } = await aJob();
  const wrong = `${number.slice(0, -1)}${number.endsWith("Z") ? "Y" : "Z"}`;
  const page = await staff.get(`/shop/find?number=${wrong}`);
  expect(page.status).toBe(422);
  expect(wordsOf(page)).toContain("The last sign does not fit");
  expect(page.text).toContain(`value="${wrong}"`);
});

it.each([
  ["", 422, "That is not a job number"],
  ["<script>alert(1)</script>", 422, "That is not a job number"],
  ["16JD", 404, "No job has that number"],
])("answers to the number %j with %i and a sentence", async (typed, status, says) => {
  const page = await staff.get(`/shop/find?number=${encodeURIComponent(typed)}`);
  expect(page.status).toBe(status);
  expect(wordsOf(page)).toContain(says);
  expect(page.text).not.toContain("<script>alert");
});
