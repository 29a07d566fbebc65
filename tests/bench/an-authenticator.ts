import { encodeBase64url } from "#src/http/base64url.ts";

const utf8 = (text: string) => Uint8Array.from(new TextEncoder().encode(text));
const sha256 = async (bytes: Uint8Array<ArrayBuffer>) => new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
const hex = (text: string) => Uint8Array.from(text.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));

/** Flags of the authenticator data (Web Authentication Level 3, 6.1). */
export const FLAG = { present: 0x01, verified: 0x04, mayCopy: 0x08, copied: 0x10, hasKey: 0x40 };

/** What an answer says; each part may be told wrong. */
export type Said = {
  readonly type?: string;
  readonly challenge: string;
  readonly origin?: string;
  readonly crossOrigin?: boolean;
  readonly rpId?: string;
  readonly flags?: number;
  readonly counter?: number;
  readonly id?: string;
  readonly userHandle?: string;
  /** Changes the signature, or the key that the browser names beside the authenticator's. */
  readonly spoil?: (bytes: Uint8Array<ArrayBuffer>) => Uint8Array;
  readonly algorithm?: number;
};

type Making = { readonly origin: string; readonly rpId: string; readonly handle: string };

/** An authenticator with one key on P-256, written from the specification and not from what checks it. */
export async function anAuthenticator({ origin, rpId, handle }: Making) {
  const keys = await crypto.subtle.generateKey({ name: "ECDSA", namedCurve: "P-256" }, true, ["sign", "verify"]);
  const { publicKey, privateKey } = keys as CryptoKeyPair;
  const raw = new Uint8Array((await crypto.subtle.exportKey("raw", publicKey)) as ArrayBuffer);
  const spki = new Uint8Array((await crypto.subtle.exportKey("spki", publicKey)) as ArrayBuffer);
  const idBytes = crypto.getRandomValues(new Uint8Array(32));
  const id = encodeBase64url(idBytes);
  /** RFC 9053, 7.1.1: kty EC2, alg ES256, crv P-256, x, y, in the order of CTAP 2. */
  const cose = Uint8Array.from([
    ...hex("a5010203262001215820"),
    ...raw.subarray(1, 33),
    ...hex("225820"),
    ...raw.subarray(33),
  ]);
  const clientData = (said: Said, type: string) =>
    utf8(
      JSON.stringify({
        type: said.type ?? type,
        challenge: said.challenge,
        origin: said.origin ?? origin,
        crossOrigin: said.crossOrigin ?? false,
      }),
    );
  const dataOf = async (said: Said, flags: number, more: readonly number[]) => {
    const counter = new Uint8Array(4);
    new DataView(counter.buffer).setUint32(0, said.counter ?? 0);
    return Uint8Array.from([...(await sha256(utf8(said.rpId ?? rpId))), said.flags ?? flags, ...counter, ...more]);
  };
  return {
    id,
    /** The answer to a request for a new passkey. */
    make: async (said: Said): Promise<string> => {
      const attested = [...new Uint8Array(16), 0, idBytes.length, ...idBytes, ...cose];
      const data = await dataOf(said, FLAG.present | FLAG.verified | FLAG.hasKey, attested);
      const response = {
        clientDataJSON: encodeBase64url(clientData(said, "webauthn.create")),
        authenticatorData: encodeBase64url(data),
        publicKey: encodeBase64url(said.spoil?.(spki) ?? spki),
        publicKeyAlgorithm: said.algorithm ?? -7,
        transports: ["internal"],
        attestationObject: "",
      };
      const named = said.id ?? id;
      return JSON.stringify({ id: named, rawId: named, type: "public-key", clientExtensionResults: {}, response });
    },
    /** The answer to a request to sign in. */
    sign: async (said: Said): Promise<string> => {
      const client = clientData(said, "webauthn.get");
      const data = await dataOf(said, FLAG.present | FLAG.verified, []);
      const signed = Uint8Array.from([...data, ...(await sha256(client))]);
      const rs = await crypto.subtle.sign({ name: "ECDSA", hash: "SHA-256" }, privateKey, signed);
      const signature = derOf(new Uint8Array(rs));
      const response = {
        clientDataJSON: encodeBase64url(client),
        authenticatorData: encodeBase64url(data),
        signature: encodeBase64url(said.spoil?.(signature) ?? signature),
        userHandle: encodeBase64url(utf8(said.userHandle ?? handle)),
      };
      const named = said.id ?? id;
      return JSON.stringify({ id: named, rawId: named, type: "public-key", clientExtensionResults: {}, response });
    },
  };
}

/** r and s as authenticators write them: DER, each number as short as it may be (ITU-T X.690, 8.3.2). */
export function derOf(rs: Uint8Array): Uint8Array<ArrayBuffer> {
  const numbers = [rs.subarray(0, 32), rs.subarray(32)].flatMap((number) => {
    const short = number.subarray(
      Math.max(
        0,
        number.findIndex((byte) => byte !== 0),
      ),
    );
    const value = short[0]! >= 0x80 ? [0, ...short] : [...short];
    return [0x02, value.length, ...value];
  });
  return Uint8Array.from([0x30, numbers.length, ...numbers]);
}
