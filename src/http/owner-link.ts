import { encodeBase64url } from "#src/http/base64url.ts";
import { hmacSha256 } from "#src/http/signed-token.ts";

/** 22 base64url characters carry 132 bits. */
const TOKEN_LENGTH = 22;

/**
 * The token of an owner's link to a booking. It is made anew from the key whenever it is shown, so a repeated request
 * gets the same link again although only its hash is stored; a new generation ends the links before it.
 */
export async function ownerToken(key: string, bookingId: string, generation: number): Promise<string> {
  const mac = await hmacSha256(utf8(key), utf8(`owner-link.${bookingId}.${generation}`));
  return encodeBase64url(mac).slice(0, TOKEN_LENGTH);
}

/** SHA-256 as lower-case hex: how tokens are stored. @example sha256Hex("abc") // "ba7816bf…" (FIPS 180-4) */
export async function sha256Hex(text: string): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", utf8(text));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
