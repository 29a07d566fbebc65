import { env } from "cloudflare:workers";
import { expect, it } from "vitest";
import { accept } from "#shared/basics/outcome.ts";
import { hmacSha256, readToken, signToken } from "#src/http/signed-token.ts";
import { hexOf, RFC_4231 } from "#tests/http/rfc-4231.ts";

it.each(RFC_4231)("gives the published digest on the edge as well: $name", async ({ key, data, mac }) => {
  expect(hexOf(await hmacSha256(key, data)).slice(0, mac.length)).toBe(mac);
});

it("reads on the edge what was signed with the worker's key", async () => {
  const claims = { purpose: "sign-in", nonce: "n1", expires: 1_000 };
  const token = await signToken(env.LINK_KEY, claims);
  expect(await readToken(env.LINK_KEY, token, { purpose: "sign-in", now: 0 })).toEqual(accept(claims));
});
