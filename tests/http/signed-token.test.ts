import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { accept, refuse } from "#shared/basics/outcome.ts";
import { hmacSha256, readToken, signToken } from "#src/http/signed-token.ts";
import { hexOf, RFC_4231 } from "#tests/http/rfc-4231.ts";

const KEY = "a-key-of-this-test-that-is-long-enough";
const CLAIMS = { purpose: "sign-in", nonce: "n1", expires: 1_000 };
const IN_TIME = { purpose: "sign-in", now: 999 };

describe("hmacSha256", () => {
  it.each(RFC_4231)("gives the published digest: $name", async ({ key, data, mac }) => {
    expect(hexOf(await hmacSha256(key, data)).slice(0, mac.length)).toBe(mac);
  });
});

describe("a signed token", () => {
  it("gives back what was signed, to the last millisecond before it expires", async () => {
    const token = await signToken(KEY, CLAIMS);
    expect(await readToken(KEY, token, IN_TIME)).toEqual(accept(CLAIMS));
    expect(await readToken(KEY, token, { ...IN_TIME, now: 1_000 })).toEqual(refuse("expired"));
  });

  it("is good for one purpose only", async () => {
    const token = await signToken(KEY, CLAIMS);
    expect(await readToken(KEY, token, { ...IN_TIME, purpose: "owner" })).toEqual(refuse("other-purpose"));
  });

  it("is worth nothing under another key", async () => {
    const token = await signToken(`${KEY}!`, CLAIMS);
    expect(await readToken(KEY, token, IN_TIME)).toEqual(refuse("not-ours"));
  });

  it("is refused when any one letter of it is another", async () => {
    const token = await signToken(KEY, CLAIMS);
    const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.=+/ ";
    await fc.assert(
      fc.asyncProperty(fc.nat(token.length - 1), fc.constantFrom(...letters), async (at, letter) => {
        fc.pre(token[at] !== letter);
        const forged = token.slice(0, at) + letter + token.slice(at + 1);
        const read = await readToken(KEY, forged, IN_TIME);
        expect(read.ok ? "believed" : read.refusal).toMatch(/^(malformed|not-ours)$/);
      }),
    );
  });

  it.each(["", ".", "..", "a", "a.b.c", "é.é", `${"A".repeat(10_000)}.A`])(
    "refuses %j without a throw",
    async (text) => {
      expect((await readToken(KEY, text, IN_TIME)).ok).toBe(false);
    },
  );

  it("is neither written nor read with a key that could be guessed", async () => {
    await expect(signToken("short", CLAIMS)).rejects.toThrow("LINK_KEY");
    await expect(readToken("", await signToken(KEY, CLAIMS), IN_TIME)).rejects.toThrow("LINK_KEY");
  });
});
