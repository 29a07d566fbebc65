import { Hono } from "hono";
import { expect, it } from "vitest";
import { readFields, readForm } from "#src/http/read-form.ts";

const site = new Hono()
  .post("/form", async (c) => c.json(await readForm(c)))
  .post("/fields", async (c) => c.json(await readFields(c)));

async function read(path: "/form" | "/fields", body: BodyInit, type?: string): Promise<unknown> {
  const headers = type === undefined ? {} : { "content-type": type };
  return (await site.request(path, { method: "POST", body, headers })).json();
}

it("reads the first value of each field, or every value", async () => {
  const body = new URLSearchParams("noticed=whine&noticed=grinding&hours=12");
  expect(await read("/form", body)).toEqual({ noticed: "whine", hours: "12" });
  expect(await read("/fields", body)).toEqual({ noticed: ["whine", "grinding"], hours: ["12"] });
});

it("leaves a file out", async () => {
  const body = new FormData();
  body.append("hours", new File(["12"], "hours.txt"));
  body.append("riding", "easy");
  expect(await read("/form", body)).toEqual({ hours: "", riding: "easy" });
});

it.each([
  ["multipart/form-data; boundary=x", "no part of it"],
  ["multipart/form-data", "hours=12"],
  ["application/json", '{ "hours": 12 }'],
  ["text/plain", "hours=12"],
])("finds no fields in what is no form: %s", async (type, body) => {
  expect(await read("/form", body, type)).toEqual({});
  expect(await read("/fields", body, type)).toEqual({});
});
