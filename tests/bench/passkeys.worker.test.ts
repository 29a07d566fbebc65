import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { anAuthenticator } from "#tests/bench/an-authenticator.ts";
import {
  aBrowser,
  addPasskey,
  aManager,
  askPlain,
  atWork,
  comeIn,
  linkFrom,
  optionsAt,
  SECURE,
  signInWith,
} from "#tests/bench/staff-at-work.ts";
import { Browser, MINUTE, MONDAY, setClock, signInPath, WARM_UP, wordsOf } from "#tests/bench/the-shop.ts";

beforeAll(...WARM_UP);
beforeEach(() => void setClock(MONDAY));

describe("a passkey on the account", () => {
  it("is asked for with what a sign-in without a name needs", async () => {
    const manager = await aManager();
    const { key } = await addPasskey(manager);
    const { options } = await optionsAt(manager, "/shop/account/passkey-options");
    expect(options).toMatchObject({
      rp: { id: "shop.example" },
      user: { name: "Manager", displayName: "Manager" },
      pubKeyCredParams: [
        { type: "public-key", alg: -7 },
        { type: "public-key", alg: -257 },
      ],
      authenticatorSelection: { residentKey: "required", userVerification: "required" },
      attestation: "none",
    });
    expect(options.excludeCredentials).toContainEqual({ type: "public-key", id: key.id });
    expect(options.challenge).toMatch(/^[\w-]{43}$/);
  });

  it("is added, listed with its label, and signs in on another device", async () => {
    const manager = await aManager();
    const { key, page } = await addPasskey(manager, "  Bench   tablet ");
    expect(wordsOf(page)).toContain("The passkey is added.");
    expect(wordsOf(page)).toMatch(/Bench tablet Added Mon, Mar 1, 2027.* not used yet/);
    const tablet = aBrowser();
    expect(await signInWith(key, tablet)).toMatchObject({ status: 200, path: "/shop" });
    expect(wordsOf(await tablet.get("/shop/account"))).toContain("by the passkey “Bench tablet”");
    expect(wordsOf(await tablet.get("/shop/account"))).toMatch(/Bench tablet Added .*, last used Mon, Mar 1, 2027/);
  });

  it("is not added twice, nor to another account, nor by an answer to an old or used challenge", async () => {
    const manager = await aManager();
    const { options, challenge } = await optionsAt(manager, "/shop/account/passkey-options");
    const key = await anAuthenticator({ origin: SECURE, rpId: "shop.example", handle: options.user.id });
    const response = await key.make({ challenge });
    const { browser: bench } = await atWork("bench");
    // A challenge is for one account: tried on another it is used up and does nothing.
    expect((await bench.post("/shop/account/passkeys", { response })).status).toBe(422);
    expect(wordsOf(await manager.post("/shop/account/passkeys", { response }))).toContain("took too long");
    const again = async () => {
      const { challenge: newer } = await optionsAt(manager, "/shop/account/passkey-options");
      return manager.post("/shop/account/passkeys", { response: await key.make({ challenge: newer }) });
    };
    expect((await again()).status).toBe(200);
    expect((await again()).status).toBe(409);
    const late = await optionsAt(manager, "/shop/account/passkey-options");
    setClock(MONDAY + 5 * MINUTE);
    const tooLate = await manager.post("/shop/account/passkeys", { response: await key.make(late) });
    expect(tooLate.status).toBe(422);
    expect(wordsOf(tooLate)).toContain("took too long");
  });

  it("is refused with a field that is wrong, and the page says so", async () => {
    const manager = await aManager();
    const { options, challenge } = await optionsAt(manager, "/shop/account/passkey-options");
    const key = await anAuthenticator({ origin: SECURE, rpId: "shop.example", handle: options.user.id });
    const response = await key.make({ challenge, origin: "https://elsewhere.example" });
    const page = await manager.post("/shop/account/passkeys", { response });
    expect(page.status).toBe(422);
    expect(wordsOf(page)).toContain("The passkey was not accepted");
  });

  it("is removed with the devices that it signed in", async () => {
    const manager = await aManager();
    const { key } = await addPasskey(manager);
    const tablet = aBrowser();
    await signInWith(key, tablet);
    expect((await tablet.get("/shop")).status).toBe(200);
    const page = await manager.post("/shop/account/passkeys/remove", { passkey: key.id });
    expect(page.text).not.toContain(key.id);
    expect((await tablet.get("/shop")).status).toBe(401);
    expect(wordsOf(await signInWith(key, aBrowser()))).toContain("not known here");
  });
});

describe("signing in with a passkey", () => {
  it("opens the page that was asked for, and no page of another site", async () => {
    const { key } = await addPasskey(await aManager());
    const browser = aBrowser();
    const asked = await browser.get("/shop/find?number=16JD");
    expect(asked.status).toBe(401);
    expect(asked.text).toContain('name="next" value="/shop/find?number=16JD"');
    expect((await signInWith(key, browser, {}, "/shop/account")).path).toBe("/shop/account");
    for (const next of [
      "https://elsewhere.example/shop",
      "//elsewhere.example",
      "/shop//elsewhere.example",
      "/api",
      "x",
    ])
      expect((await signInWith(key, aBrowser(), {}, next)).path).toBe("/shop");
  });

  it("takes each challenge once, within five minutes, and none that it did not set", async () => {
    const { key } = await addPasskey(await aManager());
    const browser = aBrowser();
    const { challenge } = await optionsAt(browser, "/shop/sign-in/options");
    const response = await key.sign({ challenge });
    expect((await browser.post("/shop/sign-in", { response })).path).toBe("/shop");
    const other = aBrowser();
    expect((await other.post("/shop/sign-in", { response })).status).toBe(401);
    expect((await other.get("/shop")).status).toBe(401);
    const made = await key.sign({ challenge: "A".repeat(43) });
    expect((await other.post("/shop/sign-in", { response: made })).status).toBe(401);
    const late = await optionsAt(other, "/shop/sign-in/options");
    setClock(MONDAY + 5 * MINUTE);
    const page = await other.post("/shop/sign-in", { response: await key.sign(late) });
    expect(page.status).toBe(401);
    expect(wordsOf(page)).toContain("took too long");
  });

  it("does not take the challenge of a new passkey for one to sign in", async () => {
    const manager = await aManager();
    const { key } = await addPasskey(manager);
    const { challenge } = await optionsAt(manager, "/shop/account/passkey-options");
    const page = await aBrowser().post("/shop/sign-in", { response: await key.sign({ challenge }) });
    expect(page.status).toBe(401);
  });

  it("refuses a copied passkey, whose counter falls behind", async () => {
    const { key } = await addPasskey(await aManager());
    expect((await signInWith(key, aBrowser(), { counter: 5 })).status).toBe(200);
    expect((await signInWith(key, aBrowser(), { counter: 5 })).status).toBe(401);
    expect((await signInWith(key, aBrowser(), { counter: 0 })).status).toBe(401);
    expect((await signInWith(key, aBrowser(), { counter: 6 })).status).toBe(200);
  });

  it("gives a new token each time, and ends the one before", async () => {
    const { key } = await addPasskey(await aManager());
    const browser = aBrowser();
    await signInWith(key, browser);
    const { cookie: before } = browser;
    await signInWith(key, browser);
    expect(browser.cookie).not.toBe(before);
    const old = aBrowser();
    old.cookie = before;
    expect((await old.get("/shop")).status).toBe(401);
    expect((await browser.get("/shop")).status).toBe(200);
  });

  it("gives a cookie that only this host's secure pages get", async () => {
    const answer = await askPlain(await signInPath(), { method: "POST" });
    expect(answer.headers.get("set-cookie")?.split("; ")).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^__Host-staff=[\w-]{22}$/),
        "Secure",
        "HttpOnly",
        "SameSite=Strict",
      ]),
    );
  });

  it("is not offered where no passkey can be: at a number, or without https", async () => {
    const at = (here: string) => new Browser({ here }).get("/shop/sign-in");
    const local = await at("http://127.0.0.1:8787");
    expect(wordsOf(local)).toContain("Passkeys need an address with a name");
    expect(local.text).toContain('href="http://localhost:8787/shop/sign-in"');
    expect(wordsOf(await at("http://shop.example"))).toContain("begins with https");
    expect((await at("http://localhost:8787")).text).toContain("data-passkey");
    const refused = await new Browser({ here: "http://shop.example" }).post("/shop/sign-in/options");
    expect(refused.status).toBe(409);
  });
});

describe("sign-ins that fail", () => {
  it("are ten in ten minutes from one source; then even a good passkey waits, and says how long", async () => {
    const { key } = await addPasskey(await aManager());
    const browser = aBrowser();
    for (let times = 0; times < 10; times += 1)
      expect((await browser.post("/shop/sign-in", { response: "nothing" })).status).toBe(422);
    const refused = await browser.post("/shop/sign-in", { response: "nothing" });
    expect(refused.status).toBe(429);
    expect(refused.headers.get("retry-after")).toBe("600");
    expect(wordsOf(refused)).toContain("Too many sign-ins failed from here. Wait 10 minutes");
    expect((await browser.post("/shop/sign-in/options")).status).toBe(429);
    expect((await browser.post(await signInPath())).status).toBe(429);
    expect((await signInWith(key, aBrowser())).status).toBe(200);
    setClock(MONDAY + 10 * MINUTE);
    expect((await signInWith(key, browser)).status).toBe(200);
  });

  it("are counted exactly when they come all at once", async () => {
    const { key } = await addPasskey(await aManager());
    const browser = aBrowser();
    const answers = await Promise.all(
      Array.from({ length: 15 }, async () => {
        const { challenge } = await optionsAt(browser, "/shop/sign-in/options");
        const response = await key.sign({ challenge, rpId: "elsewhere.example" });
        return () => browser.post("/shop/sign-in", { response });
      }),
    );
    const pages = await Promise.all(answers.map((send) => send()));
    expect(pages.filter(({ status }) => status === 401)).toHaveLength(10);
    expect(pages.filter(({ status }) => status === 429)).toHaveLength(5);
  });

  it("are not those that went well", async () => {
    const { key } = await addPasskey(await aManager());
    const browser = aBrowser();
    for (let times = 0; times < 12; times += 1) expect((await signInWith(key, browser)).status).toBe(200);
  });

  it("by forged links count as well", async () => {
    const browser = aBrowser();
    for (let times = 0; times < 10; times += 1)
      expect((await browser.post("/shop/sign-in/no-such-link")).status).toBe(401);
    expect((await browser.post("/shop/invite/no-such-link")).status).toBe(429);
  });
});

describe("an invitation", () => {
  it("makes an account with its role, once", async () => {
    const manager = await aManager();
    const link = await linkFrom(manager, "/shop/staff/invite", { role: "bench" });
    expect(wordsOf(await aBrowser().get(link))).toContain("You are invited as bench");
    const { browser, page } = await comeIn(link, { name: "Tansy Marl" });
    expect(page).toMatchObject({ status: 200, path: "/shop" });
    expect(wordsOf(await browser.get("/shop/account"))).toContain("Tansy Marl, bench");
    for (const again of [await aBrowser().get(link), await aBrowser().post(link, { name: "Somebody" })]) {
      expect(again.status).toBe(401);
      expect(wordsOf(again)).toContain("has been used");
    }
  });

  it("is shown once, with a code to scan, and ends after a day", async () => {
    const manager = await aManager();
    const page = await manager.post("/shop/staff/invite", { role: "manager" });
    expect(page.text).toContain("<svg");
    expect(page.headers.get("cache-control")).toBe("no-store");
    const link = /\/shop\/invite\/[\w.-]+/.exec(page.text)?.[0] ?? "";
    setClock(MONDAY + 24 * 60 * MINUTE - 1);
    expect((await aBrowser().get(link)).status).toBe(200);
    setClock(MONDAY + 24 * 60 * MINUTE);
    const late = await aBrowser().get(link);
    expect(late.status).toBe(401);
    expect(wordsOf(late)).toContain("has ended");
  });

  it("cannot be made by hand, and a sign-in link is none", async () => {
    const link = await linkFrom(await aManager());
    const other = await signInPath();
    for (const wrong of [`${link.slice(0, -2)}AA`, link.slice(0, -5), other.replace("sign-in", "invite")]) {
      expect((await aBrowser().get(wrong)).status).toBe(401);
      expect((await aBrowser().post(`${wrong}/options`, { name: "X" })).status).toBe(401);
      expect((await aBrowser().post(wrong, { name: "X" })).status).toBe(401);
    }
  });

  it("asks for a name that nobody has or had", async () => {
    const manager = await aManager();
    const { name } = await comeIn(await linkFrom(manager));
    const link = await linkFrom(manager);
    const taken = await comeIn(link, { name: name.toUpperCase() });
    expect(taken.page.status).toBe(422);
    expect(wordsOf(taken.page)).toContain("Somebody has or had that name");
    const nameless = await aBrowser().post(`${link}/options`, { name: "  " });
    expect(nameless.status).toBe(422);
    expect((await comeIn(link)).page.path).toBe("/shop");
  });
});
