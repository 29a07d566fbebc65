import { randomBytes } from "node:crypto";
import { signToken } from "#src/http/signed-token.ts";

const GOOD_FOR_MS = 10 * 60_000;
const NONCE_BYTES = 16;

/** This machine by its name: passkeys are kept for a host name, and a number is none. */
export const byName = (origin: string): string => origin.replace("//127.0.0.1:", "//localhost:");

/** A link that signs the shop in once, within ten minutes. */
export async function signInLink(origin: string, linkKey: string): Promise<string> {
  const nonce = randomBytes(NONCE_BYTES).toString("base64url");
  const token = await signToken(linkKey, { purpose: "sign-in", nonce, expires: Date.now() + GOOD_FOR_MS });
  return `${origin}/shop/sign-in/${token}`;
}
