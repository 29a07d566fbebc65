import { expect, it } from "vitest";
import { readWishKey } from "#src/http/idempotency.ts";

const read = (header: string | null, text = "{}") =>
  readWishKey(
    new Request("http://shop.example/", { headers: header === null ? {} : { "idempotency-key": header } }),
    text,
    "here",
  );

const keyFrom = async (header: string) => {
  const wish = await read(header);
  return wish.ok ? wish.value.key : wish.refusal.status;
};

it.each([
  ['"8e03978e-40d5"', "8e03978e-40d5"],
  ["8e03978e-40d5", "8e03978e-40d5"],
  [String.raw`"a \"b\" \\ c"`, String.raw`a "b" \ c`],
  ["k".repeat(200), "k".repeat(200)],
])("reads %s as the key %s", async (header, key) => {
  expect(await keyFrom(header)).toBe(key);
});

it.each([[""], ['""'], ["k".repeat(201)], ["two words"], ["one, two"], ['"open'], [String.raw`"a\b"`]])(
  "refuses %s with 400",
  async (header) => {
    expect(await keyFrom(header)).toBe(400);
  },
);

it("refuses a missing key with a problem that says what to send", async () => {
  const wish = await read(null);
  expect(wish.ok ? null : await wish.refusal.json()).toMatchObject({ status: 400, reason: "idempotency-key-needed" });
});

it("tells bodies apart by SHA-256", async () => {
  // "abc": FIPS 180-4, the example of SHA-256.
  expect(await read("k", "abc")).toEqual({
    ok: true,
    value: { scope: "here", key: "k", fingerprint: "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" },
  });
});
