import { env, exports } from "cloudflare:workers";
import { expect, it } from "vitest";

it("says that it is well", async () => {
  const answer = await exports.default.fetch("http://shop.example/healthz");
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({ ok: true });
});

it("has every binding it is written for", () => {
  expect(env).toMatchObject({ PUBLIC_ORIGIN: "", DEMO: "", LINK_KEY: expect.stringMatching(/.{32,}/) });
  expect(Object.keys(env)).toEqual(expect.arrayContaining(["SHOP", "BOARD", "REQUEST_LIMIT"]));
});
