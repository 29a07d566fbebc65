import { env } from "cloudflare:workers";
import { expect, it } from "vitest";

it("has every binding it is written for", () => {
  expect(env).toMatchObject({ PUBLIC_ORIGIN: "", LINK_KEY: expect.stringMatching(/.{32,}/) });
  expect(Object.keys(env)).toEqual(expect.arrayContaining(["SHOP", "BOARD", "REQUEST_LIMIT"]));
});
