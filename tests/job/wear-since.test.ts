import { expect, it } from "vitest";
import { type LastService, wearSince } from "#shared/job/wear-since.ts";
import { wearText } from "#shared/messages/figure-words.ts";
import { aCase, DIGITAL } from "#tests/job/a-sheet.ts";

const LAST: LastService = { date: "2026-05-01", engineHours: 100, left: { lbfFt: 18, uncertainty: 0.1 } };
const found = (readings: readonly number[]) => ({
  kind: "slip" as const,
  readings,
  breakaway: 25,
  tool: DIGITAL,
  why: null,
});

it("a slip of 18 found at 17 after 50 hours lost 0.2 lbf·ft in 10 hours, the breakaway left out", () => {
  const wear = wearSince(aCase(), { last: LAST, found: found([17, 17, 17]), hoursNow: 150 });
  if (wear.is !== "known") throw new Error(`Not known: ${wear.is}`);
  expect(wear.hours).toBe(50);
  expect(wear.trend.lostPerTenHours?.value).toBeCloseTo(0.2, 9);
  expect(wear.trend.lostPerTenHours?.low).toBeLessThan(0.2);
  expect(wearText(wear)).toContain("over 50 hours, it lost 0.2 lbf·ft in 10 hours (0.");
});

it("says what is lacking where there is no figure", () => {
  const at = (change: object) =>
    wearSince(aCase(), { last: LAST, found: found([17, 17, 17]), hoursNow: 150, ...change }).is;
  expect(at({ last: null })).toBe("no-service");
  expect(at({ last: { ...LAST, left: null } })).toBe("no-service");
  expect(at({ hoursNow: null })).toBe("no-hours");
  expect(at({ hoursNow: 100 })).toBe("no-hours");
  expect(at({ found: null })).toBe("too-few-readings");
  expect(at({ found: found([17, 17]) })).toBe("too-few-readings");
  expect(wearSince(aCase({ aim: null }), { last: LAST, found: found([17, 17, 17]), hoursNow: 150 }).is).toBe(
    "no-target",
  );
});
