import { expect, it } from "vitest";
import * as z from "zod";
import { checkInput } from "#src/http/check-input.ts";

const Schema = z.strictObject({
  kind: z.enum(["one", "two"]),
  hours: z.number().min(0).max(20_000).nullable(),
  count: z.int().min(1).max(5),
  over: z.number().positive().max(200),
  step: z.number().multipleOf(0.25),
  sure: z.boolean(),
  day: z.iso.date(),
  mail: z.email(),
  name: z.string().min(1).max(10),
  code: z.string().regex(/^[A-Z]{2}$/, "two capital letters"),
  list: z.array(z.number().min(1).max(9)).min(3).max(4),
  inner: z.strictObject({ deep: z.literal(true) }),
  prices: z.record(z.enum(["check", "rebuild"]), z.record(z.enum(["old", "new"]), z.int().min(0).max(100))),
  to: z.union([
    z.strictObject({ street: z.string(), town: z.string(), lines: z.array(z.string()).optional() }),
    z.strictObject({ collect: z.literal(true) }),
  ]),
});

const FINE = {
  kind: "one",
  hours: null,
  count: 1,
  over: 1,
  step: 0.5,
  sure: true,
  day: "2027-05-01",
  mail: "ann@shore.example",
  name: "Ann",
  code: "US",
  list: [1, 2, 3],
  inner: { deep: true },
  prices: { check: { old: 1, new: 2 }, rebuild: { old: 3, new: 4 } },
  to: { collect: true },
};

async function errorsFor(change: object): Promise<unknown> {
  const checked = checkInput(Schema, { ...FINE, ...change });
  return checked.ok ? [] : ((await checked.refusal.json()) as { errors: unknown }).errors;
}

it("lets pass what the schema has", () => {
  expect(checkInput(Schema, FINE)).toEqual({ ok: true, value: FINE });
});

it.each([
  [{ kind: "three" }, "kind", 'one of "one", "two"'],
  [{ hours: "many" }, "hours", "a number from 0 to 20000 or null"],
  [{ hours: -1 }, "hours", "a number from 0 to 20000 or null"],
  [{ count: 1.5 }, "count", "a whole number from 1 to 5"],
  [{ over: 0 }, "over", "a number over 0, up to 200"],
  [{ step: 0.3 }, "step", "a multiple of 0.25"],
  [{ sure: "yes" }, "sure", "true or false"],
  [{ day: "2027-02-29" }, "day", "a date that exists, YYYY-MM-DD"],
  [{ mail: "ann" }, "mail", "an email address"],
  [{ name: "" }, "name", "text of 1 to 10 characters"],
  [{ name: undefined }, "name", "text of 1 to 10 characters"],
  [{ code: "us" }, "code", "two capital letters"],
  [{ list: [1] }, "list", "a list of 3 to 4 values"],
  [{ list: [1, 2, 10] }, "list.2", "a number from 1 to 9"],
  [{ inner: { deep: false } }, "inner.deep", "true"],
  [{ inner: [] }, "inner", "an object with deep"],
  [{ inner: { deep: true, more: 1 } }, "inner.more", "no such field"],
  [{ extra: 1 }, "extra", "no such field"],
  [{ to: { street: "Slipway Lane" } }, "to.town", "text"],
  [{ to: { collect: true, town: "Ottersby" } }, "to.town", "no such field"],
  [{ prices: { ...FINE.prices, check: { old: 1, new: 1.5 } } }, "prices.check.new", "a whole number from 0 to 100"],
  [{ prices: { check: FINE.prices.check } }, "prices.rebuild", "an object with old, new"],
  [{ prices: [] }, "prices", "an object with check, rebuild"],
  [{ to: null }, "to", "an object with street, town, lines or an object with collect"],
  [{ to: {} }, "to", "an object with street, town, lines or an object with collect"],
  [{ to: "Slipway Lane" }, "to", "an object with street, town, lines or an object with collect"],
  [{ to: ["Slipway Lane"] }, "to", "an object with street, town, lines or an object with collect"],
])("of %j says that %s wants %s", async (change, field, accepted) => {
  expect(await errorsFor(change)).toEqual([{ field, accepted }]);
});

it("names every field at once", async () => {
  expect(await errorsFor({ kind: 1, hours: "x", inner: { deep: 0, more: 1 }, extra: 1 })).toEqual([
    { field: "kind", accepted: 'one of "one", "two"' },
    { field: "hours", accepted: "a number from 0 to 20000 or null" },
    { field: "inner.deep", accepted: "true" },
    { field: "inner.more", accepted: "no such field" },
    { field: "extra", accepted: "no such field" },
  ]);
});

it("names all that is missing of the branch that was meant", async () => {
  expect(await errorsFor({ to: { lines: ["7 Heron Quay"] } })).toEqual([
    { field: "to.street", accepted: "text" },
    { field: "to.town", accepted: "text" },
  ]);
  expect(await errorsFor({ to: { collect: false } })).toEqual([{ field: "to.collect", accepted: "true" }]);
});

it("names the body where it is no object at all", async () => {
  const checked = checkInput(z.strictObject({ a: z.string() }), [1]);
  expect(checked.ok ? null : await checked.refusal.json()).toMatchObject({
    status: 422,
    errors: [{ field: "body", accepted: "an object with a" }],
  });
});
