import { Hono } from "hono";
import { expect, it } from "vitest";
import { type CookieName, clearCookie, readCookie, writeCookie } from "#src/http/cookies.ts";

const jar = (origin: string) =>
  new Hono()
    .get("/:name", (c) => c.text(readCookie(c, c.req.param("name") as CookieName, origin) ?? "none"))
    .post("/:name", (c) => {
      writeCookie(c, c.req.param("name") as CookieName, "token-1", { origin, seconds: 60 });
      return c.text("kept");
    })
    .delete("/:name", (c) => {
      clearCookie(c, c.req.param("name") as CookieName, origin);
      return c.text("gone");
    });

const setBy = async (origin: string, name: CookieName, method = "POST") =>
  (await jar(origin).request(`/${name}`, { method })).headers.get("set-cookie");
const seen = async (origin: string, cookie: string) =>
  (await jar(origin).request("/draft", { headers: { cookie } })).text();

it("binds cookies to this host and to https where there is https", async () => {
  expect(await setBy("https://shop.example", "draft")).toBe(
    "__Host-draft=token-1; Max-Age=60; Path=/; HttpOnly; Secure; SameSite=Lax",
  );
  expect(await setBy("https://shop.example", "staff")).toBe(
    "__Host-staff=token-1; Max-Age=60; Path=/; HttpOnly; Secure; SameSite=Strict",
  );
});

it("works on plain http on one machine", async () => {
  expect(await setBy("http://127.0.0.1:8787", "draft")).toBe(
    "draft=token-1; Max-Age=60; Path=/; HttpOnly; SameSite=Lax",
  );
});

it("ends a cookie", async () => {
  expect(await setBy("https://shop.example", "draft", "DELETE")).toMatch(/^__Host-draft=; Max-Age=0; .*Secure/);
});

it("does not take a cookie from http for one from https", async () => {
  expect(await seen("https://shop.example", "__Host-draft=mine")).toBe("mine");
  expect(await seen("https://shop.example", "draft=planted")).toBe("none");
  expect(await seen("http://127.0.0.1:8787", "draft=mine")).toBe("mine");
});
