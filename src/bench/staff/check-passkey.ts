import { server } from "@passwordless-id/webauthn";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { PASSKEY_ALGORITHMS, type Passkey } from "#shared/shop/staff-account.ts";
import { attestedKey, flagsIn } from "#src/bench/staff/authenticator-data.ts";
import { evenSignature } from "#src/bench/staff/ecdsa-signature.ts";
import type { NewPasskeyBody, PasskeyAnswer, SignedBody } from "#src/bench/staff/passkey-body.ts";
import { decodeBase64url, encodeBase64url } from "#src/http/base64url.ts";

/** Where the passkey is used, and the challenge that the shop's object had set. */
export type PasskeySite = { readonly rpId: string; readonly origin: string };

/**
 * A new passkey, where the browser's answer holds (Web Authentication Level 3, 7.1). The library checks type,
 * challenge, origin, RP ID hash and user verification; the rest is checked here.
 */
export async function checkNewPasskey(
  { body, client }: PasskeyAnswer<NewPasskeyBody>,
  { rpId, origin }: PasskeySite,
): Promise<Outcome<Passkey, "not-accepted">> {
  const { id, response } = body;
  const expected = { challenge: client.challenge, origin, domain: rpId, userVerified: true };
  const algorithm = PASSKEY_ALGORITHMS.find((known) => COSE_NUMBER[known] === response.publicKeyAlgorithm);
  const key = attestedKey(bytesOf(response.authenticatorData));
  // Id and key stand beside what the authenticator made, and must be the same.
  const isWhole = key?.id === id && key.publicKey === response.publicKey;
  if (algorithm === undefined || !isWhole || !isPlain(body, client)) return refuse("not-accepted");
  const checked = await orNull(() => server.verifyRegistration(registrationOf(body), expected));
  if (checked === null) return refuse("not-accepted");
  const { counter } = checked.authenticator;
  return accept({ id, publicKey: response.publicKey, algorithm, counter, transports: response.transports });
}

/** How COSE numbers the algorithms (RFC 9053, 2.1; RFC 8812, 2). */
export const COSE_NUMBER = { ES256: -7, RS256: -257 } as const satisfies Record<Passkey["algorithm"], number>;

/**
 * The new counter of a passkey, where it signed for us just now (Web Authentication Level 3, 7.2). The library checks
 * type, challenge, origin, RP ID hash, presence, verification, signature and counter; the rest is checked here.
 */
export async function checkSigned(
  { body, client }: PasskeyAnswer<SignedBody>,
  { passkey, handle }: { readonly passkey: Passkey; readonly handle: string },
  { rpId, origin }: PasskeySite,
): Promise<Outcome<number, "not-accepted">> {
  const { counter, algorithm } = passkey;
  const expected = { challenge: client.challenge, origin, domain: rpId, userVerified: true, counter };
  const isTheirs = body.response.userHandle === encodeBase64url(new TextEncoder().encode(handle));
  const signature =
    algorithm === "ES256" ? evenSignature(bytesOf(body.response.signature)) : bytesOf(body.response.signature);
  if (!isTheirs || signature === null || !isPlain(body, client)) return refuse("not-accepted");
  const answer = {
    ...body,
    clientExtensionResults: {},
    response: { ...body.response, signature: encodeBase64url(signature) },
  };
  const credential = { ...passkey, transports: [] };
  const checked = await orNull(() => server.verifyAuthentication(answer, credential, expected));
  return checked === null ? refuse("not-accepted") : accept(checked.counter);
}

/** Somebody was there, no other site's page asked, and the passkey is not a copy that its kind does not allow. */
function isPlain({ response }: NewPasskeyBody | SignedBody, client: PasskeyAnswer<unknown>["client"]): boolean {
  const { userPresent, copiedAgainstItsKind } = flagsIn(bytesOf(response.authenticatorData));
  return userPresent && !copiedAgainstItsKind && client.crossOrigin !== true;
}

/** The library also asks for the attestation, which is not wanted, and for a user of its own. */
const registrationOf = (body: NewPasskeyBody) => ({
  ...body,
  clientExtensionResults: {},
  user: { name: "" },
  response: { ...body.response, attestationObject: "", transports: [] },
});

/** The library throws whatever it does not accept. */
async function orNull<Value>(check: () => Promise<Value>): Promise<Value | null> {
  try {
    return await check();
  } catch {
    return null;
  }
}

const bytesOf = (text: string): Uint8Array => decodeBase64url(text) ?? new Uint8Array();
