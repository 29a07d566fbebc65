import { Hono } from "hono";
import { expect, it } from "vitest";
import { crossSiteGuard } from "#src/http/cross-site.ts";
import { publicOrigin } from "#src/http/public-origin.ts";

const guarded = (configured = "") =>
  new Hono()
    .use(crossSiteGuard({ origin: (request) => publicOrigin(request, configured), refuse: (c) => c.text("no", 403) }))
    .all("/", (c) => c.text("yes"));

const HERE = "http://shop.example";
const status = async (method: string, headers: Record<string, string>, configured?: string) =>
  (await guarded(configured).request(`${HERE}/`, { method, headers })).status;

it.each([
  ["same-origin", 200],
  ["none", 200],
  ["same-site", 403],
  ["cross-site", 403],
])("goes by Sec-Fetch-Site first: %s is %i", async (site, expected) => {
  expect(await status("POST", { "sec-fetch-site": site })).toBe(expected);
  expect(await status("POST", { "sec-fetch-site": site, origin: "https://evil.example" })).toBe(expected);
});

it.each([
  [HERE, 200],
  ["https://shop.example", 403],
  ["https://evil.example", 403],
  ["null", 403],
])("goes by the origin where there is no such header: %s is %i", async (origin, expected) => {
  expect(await status("POST", { origin })).toBe(expected);
});

it("goes by the public origin behind a proxy", async () => {
  expect(await status("POST", { origin: "https://service.example" }, "https://service.example")).toBe(200);
  expect(await status("POST", { origin: HERE }, "https://service.example")).toBe(403);
});

it.each(["https://service.example/", "HTTPS://Service.Example", "https://service.example:443/tag?x#y"])(
  "reads the public origin as a browser would: %s",
  async (configured) => {
    expect(publicOrigin(new Request(HERE), configured)).toBe("https://service.example");
    expect(await status("POST", { origin: "https://service.example" }, configured)).toBe(200);
  },
);

it.each(["service.example", "service.example:8080", "not an address"])(
  "goes by the request where the public origin is none: %s",
  (configured) => {
    expect(publicOrigin(new Request(`${HERE}/intake`), configured)).toBe(HERE);
  },
);

it.each(["POST", "PUT", "PATCH", "DELETE"])("guards %s, whatever its content type", async (method) => {
  const evil = { origin: "https://evil.example", "content-type": "application/json" };
  expect(await status(method, evil)).toBe(403);
});

it("lets clients pass that are no browsers, and any reading", async () => {
  expect(await status("POST", {})).toBe(200);
  expect(await status("GET", { "sec-fetch-site": "cross-site", origin: "https://evil.example" })).toBe(200);
});
