import * as fc from "fast-check";
import { expect, it } from "vitest";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import {
  benchesText,
  closuresText,
  openingsText,
  readBenches,
  readClosures,
  readNumber,
  readOpenings,
} from "#src/bench/settings/setting-text.ts";
import { readSettings, SETTING_FIELDS, writeSettings } from "#src/bench/settings/settings-form.ts";

const clock = fc
  .integer({ min: 0, max: 95 })
  .map((quarter) => new Date(quarter * 900_000).toISOString().slice("1970-01-01T".length, "1970-01-01Thh:mm".length));
const date = fc
  .integer({ min: 20_000, max: 40_000 })
  .map((day) => new Date(day * 86_400_000).toISOString().slice(0, 10));
const words = fc.stringMatching(/^[A-Za-z0-9.,'-]{1,8}( [A-Za-z0-9.,'-]{1,8}){0,3}$/);

it("reads back the opening hours that it writes", () => {
  fc.assert(
    fc.property(fc.array(fc.record({ opens: clock, closes: clock }), { maxLength: 4 }), (openings) => {
      expect(readOpenings(openingsText(openings))).toEqual({ ok: true, value: openings });
    }),
  );
});

it("reads back the closures that it writes, with a reason or without", () => {
  const closure = fc.record({ from: date, to: date, why: fc.oneof(fc.constant(""), words) });
  fc.assert(
    fc.property(fc.array(closure, { maxLength: 5 }), (closures) => {
      expect(readClosures(closuresText(closures))).toEqual({ ok: true, value: closures });
    }),
  );
});

it("reads back the benches that it writes", () => {
  const bench = fc.record({ id: fc.stringMatching(/^[a-z0-9]{1,6}$/), name: words });
  fc.assert(
    fc.property(fc.array(bench, { maxLength: 5 }), (benches) => {
      expect(readBenches(benchesText(benches))).toEqual({ ok: true, value: benches });
    }),
  );
});

it.each(["", "12,5", "1e3", "-1", "12.", "Infinity", "0x10", "1 2"])("takes %j for no number", (text) => {
  expect(readNumber(text).ok).toBe(false);
});

it("reads back the demo shop's settings as they were", () => {
  expect(readSettings(writeSettings(DEMO_SHOP))).toEqual({ ok: true, value: DEMO_SHOP });
});

it("has a field for each number and text of the settings, lists being one field", () => {
  const leaves = (value: unknown, path: string): readonly string[] =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.entries(value).flatMap(([key, inner]) => leaves(inner, path === "" ? key : `${path}.${key}`))
      : [path];
  expect(SETTING_FIELDS.map(({ name }) => name).toSorted()).toEqual(leaves(DEMO_SHOP, "").toSorted());
});

it("names every field of an empty form that may not be empty", () => {
  const read = readSettings({});
  const mayBeEmpty = /^(calendar\.(weekly\.\d|closures)|bench\.needles\..+)$/;
  const needed = SETTING_FIELDS.map(({ name }) => name).filter((name) => !mayBeEmpty.test(name));
  expect(read.ok ? [] : Object.keys(read.refusal).toSorted()).toEqual(needed.toSorted());
});
