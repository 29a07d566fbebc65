import { env } from "cloudflare:workers";
import { beforeAll, beforeEach, expect, it } from "vitest";
import { writeSettings } from "#src/bench/settings/settings-form.ts";
import {
  aBrowser,
  addPasskey,
  aManager,
  atWork,
  comeIn,
  idOf,
  linkFrom,
  signInWith,
} from "#tests/bench/staff-at-work.ts";
import { fieldValue, MONDAY, setClock, WARM_UP, wordsOf } from "#tests/bench/the-shop.ts";

beforeAll(...WARM_UP);
beforeEach(() => void setClock(MONDAY));

it("never loses its last manager", async () => {
  const manager = await aManager();
  const id = await idOf(manager, "Manager");
  for (const [path, form] of [
    ["end", {}],
    ["role", { role: "bench" }],
  ] as const) {
    const page = await manager.post(`/shop/staff/${id}/${path}`, form);
    expect(page.status).toBe(409);
    expect(wordsOf(page)).toContain("The shop needs a manager");
  }
  const { browser: second } = await atWork("manager");
  expect(wordsOf(await second.post(`/shop/staff/${id}/role`, { role: "bench" }))).toContain("The role is saved.");
  expect((await manager.get("/shop/staff")).status).toBe(403);
  await second.post(`/shop/staff/${id}/role`, { role: "manager" });
  expect((await manager.get("/shop/staff")).status).toBe(200);
});

it("the machine's link signs in as the manager who has been there longest", async () => {
  const own = async () => wordsOf(await (await aManager()).get("/shop/account"));
  expect(await own()).toContain("Manager, manager");
  const { manager, browser: other } = await atWork("manager");
  const path = `/shop/staff/${await idOf(manager, "Manager")}/role`;
  await other.post(path, { role: "bench" });
  expect(await own()).toMatch(/Person \w+, manager/);
  await other.post(path, { role: "manager" });
  expect(await own()).toContain("Manager, manager");
});

it("ends an account at once: devices, passkeys and links of it are worth nothing, its name stays", async () => {
  const { manager, browser, key, name } = await atWork("manager");
  const theirLink = await linkFrom(browser);
  const id = await idOf(manager, name);
  const page = await manager.get(`/shop/staff/${id}/end`);
  expect(wordsOf(page)).toContain("The name stays beside what was done");
  expect(wordsOf(await manager.post(`/shop/staff/${id}/end`))).toContain("The account has ended.");
  expect((await browser.get("/shop")).status).toBe(401);
  expect((await browser.post("/shop/settings")).status).toBe(401);
  expect((await signInWith(key, aBrowser())).status).toBe(401);
  expect(wordsOf(await aBrowser().get(theirLink))).toContain("not a manager here any more");
  const list = wordsOf(await manager.get("/shop/staff"));
  expect(list).toMatch(new RegExp(`${name} Left Mon, Mar 1, 2027`));
  expect(list).toContain(`ended the account of ${name}`);
  for (const path of ["", "/end"]) expect((await manager.get(`/shop/staff/${id}${path}`)).status).toBe(404);
  expect((await manager.post(`/shop/staff/${id}/link`)).status).toBe(404);
});

it("lets somebody who lost every passkey back into the same account", async () => {
  const { manager, key, name } = await atWork("bench");
  const id = await idOf(manager, name);
  await manager.post(`/shop/staff/${id}/passkeys/remove`, { passkey: key.id });
  expect((await signInWith(key, aBrowser())).status).toBe(401);
  const link = await linkFrom(manager, `/shop/staff/${id}/link`);
  expect(wordsOf(await aBrowser().get(link))).toContain(`make a new passkey, ${name}`);
  const back = await comeIn(link, { name: "Somebody else" });
  expect(wordsOf(await back.browser.get("/shop/account"))).toContain(`${name}, bench`);
  expect((await signInWith(back.key, aBrowser())).status).toBe(200);
  expect((await aBrowser().get(link)).status).toBe(401);
});

it("changes a role at once, also on a device that is signed in", async () => {
  const { manager, browser, name } = await atWork("bench");
  const id = await idOf(manager, name);
  expect((await browser.get("/shop/settings")).status).toBe(403);
  await manager.post(`/shop/staff/${id}/role`, { role: "manager" });
  expect((await browser.get("/shop/settings")).status).toBe(200);
  await manager.post(`/shop/staff/${id}/role`, { role: "no-such-role" });
  expect((await browser.get("/shop/settings")).status).toBe(403);
});

it("renames, by oneself and by a manager, but to no name that is or was another's", async () => {
  const { manager, browser, name } = await atWork("bench");
  const id = await idOf(manager, name);
  expect(wordsOf(await browser.post("/shop/account/rename", { name: ` ${name}  Reed ` }))).toContain(
    `${name} Reed, bench`,
  );
  const taken = await browser.post("/shop/account/rename", { name: "mANAGER" });
  expect(taken.status).toBe(422);
  expect(fieldValue(taken, "name")).toBe("mANAGER");
  expect((await manager.post(`/shop/staff/${id}/rename`, { name: "Manager" })).status).toBe(409);
  for (const wrong of ["", "   ", "x".repeat(61), "a\u0000b"]) {
    expect((await browser.post("/shop/account/rename", { name: wrong })).status).toBe(422);
    expect((await manager.post(`/shop/staff/${id}/rename`, { name: wrong })).status).toBe(422);
  }
  await manager.post(`/shop/staff/${id}/rename`, { name: `${name} Marl` });
  expect(wordsOf(await browser.get("/shop/account"))).toContain(`${name} Marl, bench`);
});

it("signs out devices: one, all others, and all of a person", async () => {
  const { manager, browser, key, name } = await atWork("bench");
  const [tablet, phone] = [aBrowser(), aBrowser()];
  for (const device of [tablet, phone]) await signInWith(key, device);
  const page = await browser.get("/shop/account");
  const [one = ""] = [...page.text.matchAll(/name="device" value="(\w{64})"/g)].map(([, hash = ""]) => hash);
  await browser.post("/shop/account/sign-out", { device: one });
  const left = async () =>
    (await Promise.all([browser, tablet, phone].map((device) => device.get("/shop")))).map(({ status }) => status);
  expect((await left()).filter((status) => status === 401)).toHaveLength(1);
  await browser.post("/shop/account/sign-out-others");
  expect(await left()).toEqual([200, 401, 401]);
  await manager.post(`/shop/staff/${await idOf(manager, name)}/sign-out-all`);
  expect(await left()).toEqual([401, 401, 401]);
  expect((await manager.get("/shop")).status).toBe(200);
});

it("reaches nobody else's passkeys or devices through one's own account", async () => {
  const { manager, browser } = await atWork("bench");
  const { key } = await addPasskey(manager, "Not theirs");
  await browser.post("/shop/account/passkeys/remove", { passkey: key.id });
  const [hash = ""] = /name="device" value="(\w{64})"/.exec((await manager.get("/shop/account")).text)?.slice(1) ?? [];
  await browser.post("/shop/account/sign-out", { device: hash });
  expect((await signInWith(key, aBrowser())).status).toBe(200);
  expect((await manager.get("/shop/account")).text).toContain(hash);
});

it("tells managers who changed what, settings too", async () => {
  const { manager, browser, name } = await atWork("manager");
  const { version, settings } = await env.SHOP.getByName("main").settings();
  const form = { ...writeSettings(settings), ifVersion: String(version) };
  expect((await browser.post("/shop/settings", form)).status).toBe(200);
  const words = wordsOf(await manager.get("/shop/staff"));
  for (const line of [
    "The first account was made: Manager",
    "Signed in by a link of the machine: Manager",
    "Manager invited somebody as manager",
    `${name} joined as manager`,
    `${name} made a passkey: Tablet`,
    `${name} saved the settings as version ${version + 1}`,
  ])
    expect(words).toContain(line);
});

it("shows names as text, whatever is in them", async () => {
  const { manager, browser } = await atWork("bench");
  const name = `<b>"Wren" & Co</b>`;
  await browser.post("/shop/account/rename", { name });
  const page = await manager.get("/shop/staff");
  expect(page.text).not.toContain("<b>");
  expect(wordsOf(page)).toContain(name);
});
