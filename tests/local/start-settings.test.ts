import { expect, it } from "vitest";
import { startSettings } from "#src/local/start-settings.ts";

it("has a default for everything", () => {
  expect(startSettings({})).toEqual({
    ok: true,
    value: { port: 8787, demo: true, publicOrigin: "", requestsPerMinute: 300, openHoldsPerSource: "" },
  });
});

it("takes what is said", () => {
  const said = {
    PORT: "0",
    DEMO: "no",
    PUBLIC_ORIGIN: "https://x.example",
    REQUESTS_PER_MINUTE: "9",
    OPEN_HOLDS_PER_SOURCE: "7",
  };
  expect(startSettings(said)).toEqual({
    ok: true,
    value: { port: 0, demo: false, publicOrigin: "https://x.example", requestsPerMinute: 9, openHoldsPerSource: "7" },
  });
});

it.each([
  [{ PORT: "eighty" }, "PORT"],
  [{ PORT: "-1" }, "PORT"],
  [{ PORT: "65536" }, "PORT"],
  [{ PORT: "80.5" }, "PORT"],
  [{ REQUESTS_PER_MINUTE: "0" }, "REQUESTS_PER_MINUTE"],
  [{ REQUESTS_PER_MINUTE: "many" }, "REQUESTS_PER_MINUTE"],
  [{ OPEN_HOLDS_PER_SOURCE: "few" }, "OPEN_HOLDS_PER_SOURCE"],
  [{ PUBLIC_ORIGIN: "service.shop.example" }, "PUBLIC_ORIGIN"],
  [{ DEMO: "maybe" }, "DEMO"],
])("refuses %j in a sentence that names it", (env, name) => {
  expect(startSettings(env)).toEqual({ ok: false, refusal: expect.stringMatching(new RegExp(`^${name} must be`)) });
});
