import { COSE_NUMBER } from "#src/bench/staff/check-passkey.ts";
import { encodeBase64url } from "#src/http/base64url.ts";

const CHALLENGE_BYTES = 32;
/** How long the browser lets a person take; the challenge itself lives a little longer. Default of this project. */
const TIMEOUT_MS = 4 * 60_000;

/** At least 16 random bytes are asked for (Web Authentication Level 3, 13.4.3). */
export const newChallenge = (): string => encodeBase64url(crypto.getRandomValues(new Uint8Array(CHALLENGE_BYTES)));

/** Asks for any passkey of this site, by a person who is there and shows it (PublicKeyCredentialRequestOptionsJSON). */
export const signInOptions = (challenge: string, rpId: string) => ({
  challenge,
  rpId,
  timeout: TIMEOUT_MS,
  userVerification: "required",
});

type NewPasskey = {
  readonly challenge: string;
  readonly rpId: string;
  readonly shopName: string;
  readonly holder: { readonly handle: string; readonly name: string };
  /** Ids of those that the holder has: no device makes a second one. */
  readonly known: readonly string[];
};

/** Asks for a new passkey that signs in without a name typed (PublicKeyCredentialCreationOptionsJSON). */
export const newPasskeyOptions = ({ challenge, rpId, shopName, holder, known }: NewPasskey) => ({
  rp: { id: rpId, name: shopName },
  user: { id: encodeBase64url(new TextEncoder().encode(holder.handle)), name: holder.name, displayName: holder.name },
  challenge,
  pubKeyCredParams: Object.values<number>(COSE_NUMBER).map((alg) => ({ type: "public-key", alg })),
  timeout: TIMEOUT_MS,
  excludeCredentials: known.map((id) => ({ type: "public-key", id })),
  authenticatorSelection: { residentKey: "required", requireResidentKey: true, userVerification: "required" },
  attestation: "none",
});
