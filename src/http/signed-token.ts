import * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { decodeBase64url, encodeBase64url } from "#src/http/base64url.ts";

const Claims = z.strictObject({ purpose: z.string(), nonce: z.string(), expires: z.number() });

/** What a signed token says: what it is good for, which one it is, and until which instant (ms since 1970). */
export type TokenClaims = Readonly<z.infer<typeof Claims>>;

export type TokenRefusal = "malformed" | "not-ours" | "other-purpose" | "expired";

/** As many characters as 24 random bytes have in base64url; fewer is a forgotten or a guessable key. */
export const SHORTEST_KEY = 32;

/** `<claims>.<mac>`, both base64url; the mac is HMAC-SHA-256 (RFC 2104, FIPS 180-4) of the first part as written. */
export async function signToken(key: string, claims: TokenClaims): Promise<string> {
  const payload = encodeBase64url(utf8(JSON.stringify(claims)));
  return `${payload}.${encodeBase64url(await hmacSha256(keyBytes(key), utf8(payload)))}`;
}

/** The claims of a token that we signed for this purpose and that still holds at `now` (ms since 1970). */
export async function readToken(
  key: string,
  token: string,
  { purpose, now }: { readonly purpose: string; readonly now: number },
): Promise<Outcome<TokenClaims, TokenRefusal>> {
  const [payload = "", mac = "", ...rest] = token.split(".");
  const macBytes = decodeBase64url(mac);
  const claimBytes = decodeBase64url(payload);
  if (rest.length > 0 || macBytes === null || claimBytes === null) return refuse("malformed");
  const ours = await crypto.subtle.verify("HMAC", await imported(keyBytes(key), "verify"), macBytes, utf8(payload));
  if (!ours) return refuse("not-ours");
  const claims = Claims.safeParse(JSON.parse(new TextDecoder().decode(claimBytes)));
  if (!claims.success) return refuse("malformed");
  if (claims.data.purpose !== purpose) return refuse("other-purpose");
  return claims.data.expires > now ? accept(claims.data) : refuse("expired");
}

/** HMAC-SHA-256; test values in RFC 4231. */
export async function hmacSha256(key: Uint8Array, data: Uint8Array): Promise<Uint8Array> {
  return new Uint8Array(await crypto.subtle.sign("HMAC", await imported(key, "sign"), data));
}

function imported(key: Uint8Array, use: "sign" | "verify"): Promise<CryptoKey> {
  return crypto.subtle.importKey("raw", key, { name: "HMAC", hash: "SHA-256" }, false, [use]);
}

function keyBytes(key: string): Uint8Array {
  if (key.length >= SHORTEST_KEY) return utf8(key);
  throw new Error(`LINK_KEY is missing or shorter than ${SHORTEST_KEY} characters.`);
}

function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
