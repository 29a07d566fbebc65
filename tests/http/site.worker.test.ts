import { createExecutionContext } from "cloudflare:test";
import { env } from "cloudflare:workers";
import { beforeAll, expect, it, vi } from "vitest";
import { CSS, SCRIPT } from "#build/assets.ts";
import worker from "#src/worker.ts";
import { someAnswers, someOwner } from "#tests/api/an-owner.ts";
import { ask, jsonOf, problemOf, WARM_UP } from "#tests/api/ask.ts";

beforeAll(...WARM_UP);

const askWith = (bindings: Partial<Env>, url: string, init: RequestInit = {}) =>
  worker.fetch(requestOf(url, init), { ...env, ...bindings }, createExecutionContext());

const requestOf = (url: string, init: RequestInit = {}) =>
  new Request<unknown, IncomingRequestCfProperties>(url, init as RequestInit<IncomingRequestCfProperties>);

const HEADERS = {
  "content-security-policy":
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
    "form-action 'self'; base-uri 'none'; object-src 'none'; frame-ancestors 'none'",
  "referrer-policy": "same-origin",
  "x-content-type-options": "nosniff",
  "x-frame-options": "DENY",
  "cross-origin-opener-policy": "same-origin",
};

it.each([
  ["/healthz", 200],
  ["/api/slots?verdict=slip-check", 200],
  ["/api/slots", 422],
  ["/api/nothing", 404],
  ["/nothing", 404],
  [`/assets/${CSS.name}`, 200],
])("sends its headers with every answer: %s", async (path, status) => {
  const answer = await ask(path);
  expect(answer.status).toBe(status);
  expect(Object.fromEntries(answer.headers)).toMatchObject(HEADERS);
  expect(answer.headers.get("strict-transport-security")).toBeNull();
});

it("asks for https for two years once it is reached by https, also behind a proxy", async () => {
  for (const answer of [
    await askWith({}, "https://shop.example/healthz"),
    await askWith({ PUBLIC_ORIGIN: "https://shop.example" }, "http://127.0.0.1/healthz"),
  ]) {
    expect(answer.headers.get("strict-transport-security")).toBe("max-age=63072000; includeSubDomains");
  }
});

it("keeps files that are named after their content for ever, and nothing else", async () => {
  for (const [name, type] of [
    [CSS.name, "text/css; charset=utf-8"],
    [SCRIPT.name, "text/javascript; charset=utf-8"],
  ]) {
    const answer = await ask(`/assets/${name}`);
    expect(answer.headers.get("content-type")).toBe(type);
    expect(answer.headers.get("cache-control")).toBe("public, max-age=31536000, immutable");
  }
  expect((await ask("/assets/page.0000000000.css")).status).toBe(404);
  expect((await ask("/api/slots?verdict=slip-check")).headers.get("cache-control")).toBe("no-store");
});

it("tells how well it is and how new its zone data are", async () => {
  expect(await jsonOf(ask("/healthz"), 200)).toEqual({
    ok: true,
    version: expect.stringMatching(/^\d+\.\d+\.\d+$/),
    zoneData: { zone: "America/Vancouver", on: "2026-12-15", offset: "-07:00" },
  });
});

it.each([
  [{ origin: "https://evil.example" }, 403],
  [{ "sec-fetch-site": "cross-site" }, 403],
  [{ origin: "http://shop.example" }, 200],
  [{ "sec-fetch-site": "same-origin" }, 200],
  [{}, 200],
])("takes JSON from its own pages and from programs, not from another site's page: %j", async (headers, status) => {
  const body = { unitFamily: "set-nut", riding: "easy", mods: { engine: false, charger: false } };
  expect((await ask("/api/slip-plan", { body, headers })).status).toBe(status);
});

it("says no to a program in problem details and to a person on a page", async () => {
  await problemOf(ask("/api/nothing"), 404);
  await problemOf(ask("/api"), 404);
  const page = await ask("/nothing");
  expect(page.headers.get("content-type")).toBe("text/html; charset=UTF-8");
  expect(await page.text()).toContain("<h1>Nothing here</h1>");
});

it("names the methods that an address answers", async () => {
  const refused = await ask("/api/triage", { method: "PUT" });
  expect(refused.headers.get("allow")).toBe("POST");
  await problemOf(refused, 405);
  expect((await ask("/api/bookings/some", { method: "PUT" })).headers.get("allow")).toBe("GET, HEAD, PATCH, DELETE");
});

it("takes bodies of 64 KiB and no more", async () => {
  const padded = (bytes: number) => `${"{}".padEnd(bytes - 1)} `;
  await problemOf(ask("/api/triage", { body: padded(64 * 1024) }), 422);
  await problemOf(ask("/api/triage", { body: padded(64 * 1024 + 1) }), 413);
  expect((await ask("/nothing", { body: padded(70_000) })).status).toBe(413);
});

it("counts a body whose length nobody told", async () => {
  const bytes = new TextEncoder().encode(" ".repeat(40_000));
  const body = new ReadableStream({
    start(controller) {
      controller.enqueue(bytes);
      controller.enqueue(bytes);
      controller.close();
    },
  });
  const headers = { "content-type": "application/json" };
  const answer = await askWith({}, "http://shop.example/api/triage", { method: "POST", headers, body });
  await problemOf(answer, 413);
});

it("stops a source that asks too much, and says when to come back", async () => {
  const asked: string[] = [];
  const limiter = { limit: async ({ key }: { key: string }) => ({ success: asked.push(key) < 3 }) };
  const at = (path: string, address: string) =>
    askWith({ REQUEST_LIMIT: limiter }, `http://shop.example${path}`, { headers: { "cf-connecting-ip": address } });
  expect((await at("/api/slots", "192.0.2.77")).status).toBe(422);
  expect((await at("/nothing", "192.0.2.78")).status).toBe(404);
  const refused = await at("/api/slots", "192.0.2.77");
  expect(refused.headers.get("retry-after")).toBe("60");
  await problemOf(refused, 429);
  expect((await at("/nothing", "192.0.2.77")).headers.get("content-type")).toMatch("text/html");
  expect((await at("/healthz", "192.0.2.77")).status).toBe(200);
  expect((await at(`/assets/${CSS.name}`, "192.0.2.77")).status).toBe(200);
  expect(asked).toHaveLength(4);
  expect(new Set(asked).size).toBe(2);
  expect(asked.join()).not.toContain("192.0.2");
});

it("works without a limiter and without a place for the board", async () => {
  const { REQUEST_LIMIT: _, BOARD: __, ...rest } = env;
  const url = "http://shop.example/api/slots?verdict=slip-check";
  const answer = await worker.fetch(requestOf(url), rest as Env, createExecutionContext());
  expect(answer.status).toBe(200);
});

it.each(["multipart/form-data; boundary=x", "multipart/form-data"])(
  "asks again where what was sent is no form: %s",
  async (type) => {
    const answer = await ask("/intake/symptoms", { body: "broken", headers: { "content-type": type } });
    expect(answer.status).toBe(422);
    await answer.text();
  },
);

it.each([[""], ["short"]])("says clearly that it has no key: %j", async (LINK_KEY) => {
  const answer = await askWith({ LINK_KEY }, "http://shop.example/api/slots");
  expect((await problemOf(answer, 503)).detail).toMatch(/LINK_KEY is missing or has fewer than 32 characters/);
});

it("logs a failure by its route, and nothing that anybody sent", async () => {
  const log = vi.spyOn(console, "log").mockImplementation(() => undefined);
  const broken = {
    getByName: () => {
      throw new Error("Wren Calloway wants b1.1 held");
    },
  } as unknown as Env["SHOP"];
  const body = JSON.stringify({ hold: "some-hold", answers: someAnswers(), ...someOwner() });
  const headers = {
    "content-type": "application/json",
    "idempotency-key": "some-key",
    "cf-connecting-ip": "192.0.2.79",
  };
  const answer = await askWith({ SHOP: broken }, "http://shop.example/api/bookings?secret=1", {
    method: "POST",
    headers,
    body,
  });
  await problemOf(answer, 500);
  const receipt = await askWith({ SHOP: broken }, "http://shop.example/api/bookings/a-secret-id");
  expect(await receipt.text()).not.toContain("Wren");
  const lines = log.mock.calls.map(([line]) => JSON.parse(String(line)));
  expect(lines.map(({ at }) => at)).toEqual(["POST /api/bookings", "GET /api/bookings/:id"]);
  expect(JSON.stringify(lines)).not.toMatch(/Wren|shore|555|Heron|some-hold|some-key|secret|192\.0\.2/);
});
