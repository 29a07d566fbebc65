import { createHmac } from "node:crypto";
import { expect, it } from "vitest";
import { ownerToken, sha256Hex } from "#src/http/owner-link.ts";

const KEY = "a-key-for-tests-that-is-long-enough";

it("is the first 22 characters of the HMAC, as another implementation makes it", async () => {
  const mac = createHmac("sha256", KEY).update("owner-link.booking-1.1").digest("base64url");
  expect(await ownerToken(KEY, "booking-1", 1)).toBe(mac.slice(0, 22));
});

it("differs by booking, generation and key", async () => {
  const tokens = await Promise.all([
    ownerToken(KEY, "booking-1", 1),
    ownerToken(KEY, "booking-1", 2),
    ownerToken(KEY, "booking-2", 1),
    ownerToken(`${KEY}!`, "booking-1", 1),
  ]);
  expect(new Set(tokens).size).toBe(4);
});

it("hashes as FIPS 180-4 has it", async () => {
  expect(await sha256Hex("")).toBe("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
});
