import { beforeAll, describe, expect, it } from "vitest";
import type { Passkey } from "#shared/shop/staff-account.ts";
import { attestedKey } from "#src/bench/staff/authenticator-data.ts";
import { checkNewPasskey, checkSigned } from "#src/bench/staff/check-passkey.ts";
import { evenSignature } from "#src/bench/staff/ecdsa-signature.ts";
import { readNewPasskey, readSigned } from "#src/bench/staff/passkey-body.ts";
import { encodeBase64url } from "#src/http/base64url.ts";
import { anAuthenticator, derOf, FLAG, type Said } from "#tests/bench/an-authenticator.ts";

const SITE = { origin: "https://shop.example", rpId: "shop.example" };
const HANDLE = "handle-of-wren";
const CHALLENGE = encodeBase64url(new Uint8Array(32).fill(7));

/**
 * The challenge that the object gave out is the one in the answer, or the answer never gets here: that is tested with
 * the pages. All other fields are checked here, one wrong at a time.
 */
const SAID: Said = { challenge: CHALLENGE };

let authenticator: Awaited<ReturnType<typeof anAuthenticator>>;
beforeAll(async () => {
  authenticator = await anAuthenticator({ ...SITE, handle: HANDLE });
});

async function made(said: Partial<Said> = {}) {
  const answer = readNewPasskey(await authenticator.make({ ...SAID, ...said }));
  return answer.ok ? checkNewPasskey(answer.value, SITE) : answer;
}

async function signed(said: Partial<Said> = {}, { counter = 0, handle = HANDLE } = {}) {
  const passkey = await made();
  if (!passkey.ok) throw new Error("No passkey");
  const answer = readSigned(await authenticator.sign({ ...SAID, ...said }));
  return answer.ok ? checkSigned(answer.value, { passkey: { ...passkey.value, counter }, handle }, SITE) : answer;
}

const flipLast = (bytes: Uint8Array) => bytes.map((byte, at) => (at === bytes.length - 1 ? byte ^ 1 : byte));

describe("a new passkey", () => {
  it("is taken as the authenticator made it", async () => {
    const passkey = await made({ counter: 3 });
    expect(passkey).toMatchObject({
      ok: true,
      value: { id: authenticator.id, algorithm: "ES256", counter: 3, transports: ["internal"] },
    });
  });

  it.each<readonly [string, Partial<Said>]>([
    ["another type", { type: "webauthn.get" }],
    ["another site's origin", { origin: "https://elsewhere.example" }],
    ["the same host over http", { origin: "http://shop.example" }],
    ["a page of ours inside another's", { crossOrigin: true }],
    ["another RP ID", { rpId: "elsewhere.example" }],
    ["nobody there", { flags: FLAG.verified | FLAG.hasKey }],
    ["nobody verified", { flags: FLAG.present | FLAG.hasKey }],
    ["no key in it", { flags: FLAG.present | FLAG.verified }],
    ["a copy that its kind does not allow", { flags: FLAG.present | FLAG.verified | FLAG.hasKey | FLAG.copied }],
    ["another id beside it", { id: encodeBase64url(new Uint8Array(32)) }],
    ["another key beside it", { spoil: flipLast }],
    ["an algorithm that was not asked for", { algorithm: -8 }],
  ])("is refused with %s", async (_, said) => {
    expect(await made(said)).toEqual({ ok: false, refusal: "not-accepted" });
  });

  it("may be a copy where its kind allows it", async () => {
    const flags = FLAG.present | FLAG.verified | FLAG.hasKey | FLAG.mayCopy | FLAG.copied;
    expect((await made({ flags })).ok).toBe(true);
  });

  it("with an RSA key is read as that key", async () => {
    const how = { name: "RSASSA-PKCS1-v1_5", hash: "SHA-256", modulusLength: 2048 };
    const exponent = { publicExponent: Uint8Array.of(1, 0, 1) };
    const { publicKey } = (await crypto.subtle.generateKey({ ...how, ...exponent }, true, ["sign"])) as CryptoKeyPair;
    const spki = new Uint8Array((await crypto.subtle.exportKey("spki", publicKey)) as ArrayBuffer);
    const { n = "" } = (await crypto.subtle.exportKey("jwk", publicKey)) as JsonWebKey;
    const modulus = Uint8Array.from(atob(n.replaceAll("-", "+").replaceAll("_", "/")), (it) => it.charCodeAt(0));
    // RFC 8230, 4: kty RSA, alg RS256, n, e.
    const cose = [0xa4, 1, 3, 3, 0x39, 1, 0, 0x20, 0x59, 1, 0, ...modulus, 0x21, 0x43, 1, 0, 1];
    const data = Uint8Array.from([
      ...new Uint8Array(32),
      FLAG.hasKey,
      0,
      0,
      0,
      0,
      ...new Uint8Array(16),
      0,
      1,
      9,
      ...cose,
    ]);
    expect(attestedKey(data)).toEqual({ id: encodeBase64url(Uint8Array.of(9)), publicKey: encodeBase64url(spki) });
    expect(attestedKey(data.subarray(0, 200))).toBeNull();
  });
});

describe("signing in", () => {
  it("is taken, and says how often the passkey has signed", async () => {
    expect(await signed({ counter: 8 }, { counter: 7 })).toEqual({ ok: true, value: 8 });
    expect(await signed({ counter: 0 }, { counter: 0 })).toEqual({ ok: true, value: 0 });
  });

  it.each<readonly [string, Partial<Said>]>([
    ["another type", { type: "webauthn.create" }],
    ["another site's origin", { origin: "https://elsewhere.example" }],
    ["a page of ours inside another's", { crossOrigin: true }],
    ["another RP ID", { rpId: "elsewhere.example" }],
    ["nobody there", { flags: FLAG.verified }],
    ["nobody verified", { flags: FLAG.present }],
    ["a copy that its kind does not allow", { flags: FLAG.present | FLAG.verified | FLAG.copied }],
    ["somebody else's handle", { userHandle: "handle-of-tansy" }],
    ["no handle", { userHandle: "" }],
    ["another passkey's id", { id: encodeBase64url(new Uint8Array(32)) }],
    ["a wrong signature", { spoil: flipLast }],
    ["a signature cut short", { spoil: (bytes) => bytes.subarray(0, -1) }],
    ["no signature", { spoil: () => new Uint8Array() }],
  ])("is refused with %s", async (_, said) => {
    expect(await signed(said)).toEqual({ ok: false, refusal: "not-accepted" });
  });

  it.each([
    [5, 5],
    [4, 5],
    [0, 5],
  ])("is refused when the counter says %i after %i: the passkey was copied", async (counter, before) => {
    expect((await signed({ counter }, { counter: before })).ok).toBe(false);
  });

  it("is refused when the key is another one", async () => {
    const other = await anAuthenticator({ ...SITE, handle: HANDLE });
    const theirs = readNewPasskey(await other.make(SAID));
    const passkey = theirs.ok ? await checkNewPasskey(theirs.value, SITE) : theirs;
    if (!passkey.ok) throw new Error("No passkey");
    const known: Passkey = { ...passkey.value, id: authenticator.id };
    const answer = readSigned(await authenticator.sign(SAID));
    expect(answer.ok && (await checkSigned(answer.value, { passkey: known, handle: HANDLE }, SITE)).ok).toBe(false);
  });

  it("is taken every time, also where a number of the signature begins with zeros", async () => {
    // One signature in 128 has a number that is shorter than 32 bytes.
    for (let times = 0; times < 400; times += 1) expect((await signed()).ok).toBe(true);
  });
});

it("writes both numbers of a signature at full length, however short they were", () => {
  for (const zeros of [0, 1, 2, 31]) {
    const rs = Uint8Array.from({ length: 64 }, (_, at) => (at % 32 < zeros ? 0 : 200));
    const even = evenSignature(derOf(rs));
    expect(even).toEqual(Uint8Array.from([0x30, 70, 2, 33, 0, ...rs.subarray(0, 32), 2, 33, 0, ...rs.subarray(32)]));
  }
});

it.each([
  "",
  "null",
  "{}",
  "[1]",
  "{",
  JSON.stringify({ id: "a", rawId: "b", type: "public-key", response: {} }),
  JSON.stringify({ id: "!", rawId: "!", type: "public-key", response: { clientDataJSON: "e30" } }),
])("reads nothing out of %j", (text) => {
  expect(readNewPasskey(text).ok).toBe(false);
  expect(readSigned(text).ok).toBe(false);
});
