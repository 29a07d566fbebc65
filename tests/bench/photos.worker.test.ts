import { runDurableObjectAlarm, runInDurableObject } from "cloudflare:test";
import { env, exports } from "cloudflare:workers";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { MOST_PHOTO_BYTES, MOST_PHOTOS } from "#shared/job/photo.ts";
import { sha256OfBytes } from "#src/http/photo-form.ts";
import { siteOf } from "#src/site.ts";
import { aJob } from "#tests/bench/a-job.ts";
import { Browser, fresh, HERE, MINUTE, MONDAY, setClock, signedIn, WARM_UP, wordsOf } from "#tests/bench/the-shop.ts";
import { exifSegment, JPEG, join, PNG, SECRET, text, WEBP, withSegments } from "#tests/support/photos.ts";

let staff: Browser;
const shop = () => env.SHOP.getByName("main");

beforeAll(...WARM_UP);
beforeEach(async () => {
  setClock(MONDAY);
  staff = await signedIn();
});

type Sent = { readonly bytes?: Uint8Array; readonly of?: string; readonly key?: string; readonly accept?: string };

/** Sends a photo as a form, or as the page's script does. */
function send(
  number: string,
  { bytes = JPEG, of = "inspect/shaft", key, accept = "text/html" }: Sent = {},
  as = staff,
) {
  const body = new FormData();
  body.set("of", of);
  if (key !== undefined) body.set("key", key);
  body.set("photo", new File([Uint8Array.from(bytes)], "IMG.JPG", { type: "text/html" }));
  return exports.default.fetch(`${HERE}/shop/jobs/${number}/photos`, {
    method: "POST",
    body,
    headers: { cookie: as.cookie, accept, "sec-fetch-site": "same-origin", "cf-connecting-ip": "192.0.2.7" },
    redirect: "manual",
  });
}

/** Sends one as the script does, and answers its address. */
async function kept(number: string, sent: Sent = {}): Promise<string> {
  const answer = await send(number, { accept: "application/json", ...sent });
  const said = (await answer.json()) as { src: string };
  expect([answer.status, said]).toMatchObject([201, { src: expect.any(String) }]);
  return said.src;
}

const look = (path: string, as = staff, headers = {}) =>
  exports.default.fetch(`${HERE}${path}`, { headers: { cookie: as.cookie, ...headers }, redirect: "manual" });
const bytesOf = async (answer: Response) => new Uint8Array(await answer.arrayBuffer());
const idIn = (src: string) => src.split("/").at(-1)!;
const stored = async () => (await env.PHOTOS.list()).objects.map(({ key }) => key);
const historyOf = async (number: string) => (await shop().job(number))!.history.map(({ what }) => what);

describe("a photo that is kept", () => {
  it.each([
    ["image/jpeg", withSegments(JPEG, exifSegment()), JPEG],
    ["image/png", PNG, PNG],
    ["image/webp", WEBP, WEBP],
  ])("is shown as %s, whatever its sender called it, with nothing in it but the picture", async (type, sent, clean) => {
    const { number } = await aJob();
    const answer = await look(await kept(number, { bytes: sent }));
    expect(await bytesOf(answer)).toEqual(Uint8Array.from(clean));
    const headers = Object.fromEntries(answer.headers);
    expect(headers).toMatchObject({
      "content-type": type,
      "x-content-type-options": "nosniff",
      "cache-control": "private, no-cache",
      etag: `"${await sha256OfBytes(Uint8Array.from(clean))}"`,
      "content-disposition": "inline",
    });
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
  });

  it("is not sent again to a browser that has it", async () => {
    const { number } = await aJob();
    const src = await kept(number);
    const etag = (await look(src)).headers.get("etag");
    const again = await look(src, staff, { "if-none-match": etag });
    expect([again.status, (await bytesOf(again)).length]).toEqual([304, 0]);
  });

  it("is on the page of photos with what it is of, who took it, and in the history with no address", async () => {
    const { number } = await aJob();
    const sent = await send(number);
    expect([sent.status, sent.headers.get("location")]).toEqual([303, `/shop/jobs/${number}/photos?done=added`]);
    const page = await staff.get(`/shop/jobs/${number}/photos?done=added`);
    expect(wordsOf(page)).toContain("The photo is kept.");
    expect(wordsOf(page)).toContain("Inspect: Shaft, taken by");
    const [event] = (await shop().job(number))!.history.slice(-1);
    expect(event).toMatchObject({ what: "photo-added", note: "Inspect: Shaft", who: "shop" });
    expect(event?.staff).toBeTruthy();
  });

  it("is kept once, however often it is sent with the same key", async () => {
    const { number } = await aJob();
    const key = `a-key-of-a-device-${fresh()}`;
    const src = await kept(number, { key });
    expect(await kept(number, { key })).toBe(src);
    expect(await shop().photos(number)).toHaveLength(1);
  });
});

describe("who may see it", () => {
  it("is the shop, and the owner by the link of that job alone", async () => {
    const [one, other] = [await aJob(), await aJob()];
    const id = idIn(await kept(one.number));
    const stranger = new Browser();
    expect((await look(`/tag/${one.token}/photos/${id}`, stranger)).status).toBe(200);
    expect((await look(`/tag/${other.token}/photos/${id}`, stranger)).status).toBe(404);
    expect((await look(`/tag/${"x".repeat(22)}/photos/${id}`, stranger)).status).toBe(404);
    expect((await look(`/shop/jobs/${one.number}/photos/${id}`, stranger)).status).toBe(401);
    expect((await look(`/shop/jobs/${other.number}/photos/${id}`)).status).toBe(404);
  });

  it("is nobody from the moment it is removed, and its bytes go", async () => {
    const { number, token } = await aJob();
    const src = await kept(number);
    const key = `photos/${idIn(src)}`;
    expect(await stored()).toContain(key);
    const page = await staff.post(`${src}/remove`);
    expect(wordsOf(page)).toContain("The photo is removed.");
    expect((await look(src)).status).toBe(404);
    expect((await look(`/tag/${token}/photos/${idIn(src)}`, new Browser())).status).toBe(404);
    await runDurableObjectAlarm(shop());
    expect(await stored()).not.toContain(key);
    expect((await staff.post(`${src}/remove`)).status).toBe(200);
    expect(await historyOf(number)).toEqual(["booked", "photo-added", "photo-removed"]);
  });
});

describe("what is no photo for the job", () => {
  it.each([
    [
      "a page that calls itself a photo",
      text("<!doctype html><script>alert(1)</script>"),
      "inspect",
      415,
      "not a photo of an accepted kind",
    ],
    ["nothing", new Uint8Array(), "inspect", 422, "Choose a photo first"],
    ["half a photo", JPEG.subarray(0, 200), "inspect", 422, "did not arrive whole"],
    ["a photo of nothing that there is", JPEG, "somewhere", 422, "Choose what the photo is of"],
    ["a photo of a part outside of the inspection", JPEG, "inspect/rudder", 422, "Choose what the photo is of"],
  ])("is refused with what would be accepted, and leaves no bytes: %s", async (_, bytes, of, status, says) => {
    const { number } = await aJob();
    const before = await stored();
    const answer = await send(number, { bytes, of });
    expect(answer.status).toBe(status);
    expect(wordsOf({ ...(await staff.get("/shop")), text: await answer.text() })).toContain(says);
    const toScript = await send(number, { bytes, of, accept: "application/json" });
    expect([toScript.status, await toScript.json()]).toMatchObject([status, { detail: expect.stringContaining(says) }]);
    expect(await stored()).toEqual(before);
    expect(await historyOf(number)).toEqual(["booked"]);
  });

  it("is refused where it is larger than a phone's camera makes, and so is any other large form", async () => {
    const { number } = await aJob();
    const large = await send(number, { bytes: join(JPEG, new Uint8Array(MOST_PHOTO_BYTES)) });
    expect(large.status).toBe(413);
    expect(await large.text()).toContain("15 MB");
    const almost = new Uint8Array(2 * 1024 * 1024);
    expect(await bytesOf(await look(await kept(number, { bytes: join(JPEG, almost) })))).toEqual(Uint8Array.from(JPEG));
    const elsewhere = await staff.post(`/shop/jobs/${number}/cancel`, { why: "x".repeat(70 * 1024) });
    expect(elsewhere.status).toBe(413);
  });

  it("is refused once the job has as many as it may have, or is over", async () => {
    const { number } = await aJob();
    const serial = await runInDurableObject(shop(), (_, { storage }) => {
      const { job } = storage.sql.exec<{ job: number }>("SELECT max(serial) AS job FROM job").one();
      for (let n = 0; n < MOST_PHOTOS; n += 1)
        storage.sql.exec(
          "INSERT INTO photo (id, key, job, step, part, type, bytes, sha256, at, staff) VALUES (?1, ?1, ?2, 'inspect', NULL, 'image/png', 1, '', 1, 'Ines')",
          `full-${number}-${n}`,
          job,
        );
      return job;
    });
    expect(serial).toBeGreaterThan(0);
    expect((await send(number)).status).toBe(409);
    const over = await aJob();
    await staff.post(`/shop/jobs/${over.number}/cancel`);
    expect((await send(over.number)).status).toBe(409);
  });

  it("is taken from nobody who is not signed in, nor from another site's page", async () => {
    const { number } = await aJob();
    expect((await send(number, {}, new Browser())).status).toBe(401);
    const body = new FormData();
    body.set("of", "inspect");
    const headers = { cookie: staff.cookie, "sec-fetch-site": "cross-site" };
    const init = { method: "POST", body, headers };
    expect((await exports.default.fetch(`${HERE}/shop/jobs/${number}/photos`, init)).status).toBe(403);
    expect(await shop().photos(number)).toEqual([]);
  });
});

describe("bytes that nobody claims", () => {
  it("are dropped an hour later, and can be claimed no more", async () => {
    const { number } = await aJob();
    const [id, key] = [`lost-${fresh()}`, `key-${fresh()}`];
    await shop().announcePhoto({ number, id, key });
    await env.PHOTOS.put(`photos/${id}`, SECRET);
    setClock(MONDAY + 59 * MINUTE);
    await runDurableObjectAlarm(shop());
    expect(await stored()).toContain(`photos/${id}`);
    setClock(MONDAY + 61 * MINUTE);
    await runDurableObjectAlarm(shop());
    expect(await stored()).not.toContain(`photos/${id}`);
    const late = {
      number,
      id,
      key,
      step: "inspect",
      part: null,
      type: "image/png",
      bytes: 1,
      sha256: "",
      staff: "Ines",
    };
    expect(await shop().keepPhoto(late as never)).toEqual({ ok: false, refusal: { reason: "came-too-late" } });
  });

  it("are kept in mind while the store fails, and dropped when it works again", async () => {
    const { number } = await aJob();
    const src = await kept(number);
    await staff.post(`${src}/remove`);
    const drops: string[] = [];
    await runInDurableObject(shop(), async (ledger) => {
      const { photoStore } = ledger;
      ledger.photoStore = { drop: () => Promise.reject(new Error("The store is away")) };
      await ledger.alarm();
      setClock(MONDAY + 11 * MINUTE);
      ledger.photoStore = { drop: async (id) => void drops.push(id) };
      await ledger.alarm();
      await ledger.alarm();
      ledger.photoStore = photoStore;
    });
    expect(drops).toEqual([idIn(src)]);
  });
});

it("says that photos are switched off where the worker has no bucket", async () => {
  const { number } = await aJob();
  const { PHOTOS: _, ...bare } = env;
  const site = siteOf(bare as Env);
  const headers = { cookie: staff.cookie, "cf-connecting-ip": "192.0.2.7" };
  const page = await site.fetch(new Request(`${HERE}/shop/jobs/${number}/photos`, { headers }));
  const words = wordsOf({ ...(await staff.get("/shop")), text: await page.text() });
  expect(words).toContain("Photos are switched off");
  expect(words).not.toContain("Send the photo");
  const body = new FormData();
  body.set("of", "inspect");
  body.set("photo", new File([JPEG], "a.jpg"));
  const sent = await site.fetch(new Request(`${HERE}/shop/jobs/${number}/photos`, { method: "POST", body, headers }));
  expect(sent.status).toBe(503);
});
