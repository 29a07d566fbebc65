import { encodeBase64url } from "#src/http/base64url.ts";

/** Where parts of the authenticator data lie (Web Authentication Level 3, 6.1 and 6.5.1). */
const FLAGS_AT = 32;
const ID_LENGTH_AT = 53;
const ID_AT = 55;

/** What the library leaves unread in the data that an authenticator made. */
export type AuthenticatorFlags = {
  readonly userPresent: boolean;
  /** A copy elsewhere that the kind of passkey does not allow. */
  readonly copiedAgainstItsKind: boolean;
};

export function flagsIn(data: Uint8Array): AuthenticatorFlags {
  const flags = data[FLAGS_AT] ?? 0;
  return { userPresent: (flags & 0x01) !== 0, copiedAgainstItsKind: (flags & 0x18) === 0x10 };
}

/** The id and key that the authenticator made, the key as a SubjectPublicKeyInfo; null where they cannot be read. */
export function attestedKey(data: Uint8Array): { readonly id: string; readonly publicKey: string } | null {
  const hasKey = ((data[FLAGS_AT] ?? 0) & 0x40) !== 0;
  if (!hasKey || data.length < ID_AT) return null;
  const idEnd = ID_AT + ((data[ID_LENGTH_AT] ?? 0) << 8) + (data[ID_LENGTH_AT + 1] ?? 0);
  const publicKey = spkiOf(data.subarray(idEnd));
  if (publicKey === null) return null;
  return { id: encodeBase64url(data.subarray(ID_AT, idEnd)), publicKey: encodeBase64url(publicKey) };
}

/**
 * COSE keys as authenticators write them, in the one order that CTAP 2 allows (RFC 9053, 7.1.1 and RFC 8230, 4), and
 * the header that the same key has as SubjectPublicKeyInfo (RFC 5480, RFC 8017). `#` is where the key's numbers stand.
 */
const KEY_FORMS = [
  {
    cose: ["a5010203262001215820", 32, "225820", 32],
    spki: ["3059301306072a8648ce3d020106082a8648ce3d03010703420004", 0, "", 1],
  },
  {
    cose: ["a401030339010020590100", 256, "2143010001", 0],
    spki: ["30820122300d06092a864886f70d01010105000382010f003082010a0282010100", 0, "0203010001", 1],
  },
] as const;

function spkiOf(cose: Uint8Array): Uint8Array | null {
  for (const { cose: form, spki } of KEY_FORMS) {
    const numbers = numbersIn(cose, form);
    if (numbers === null) continue;
    const [before, first, between, second] = spki;
    return Uint8Array.from([...hex(before), ...(numbers[first] ?? []), ...hex(between), ...(numbers[second] ?? [])]);
  }
  return null;
}

function numbersIn(cose: Uint8Array, [before, long, between, short]: readonly [string, number, string, number]) {
  const [head, middle] = [hex(before), hex(between)];
  const firstEnd = head.length + long;
  const secondAt = firstEnd + middle.length;
  const fits = startsWith(cose, head) && startsWith(cose.subarray(firstEnd), middle) && cose.length >= secondAt + short;
  return fits ? [cose.subarray(head.length, firstEnd), cose.subarray(secondAt, secondAt + short)] : null;
}

const startsWith = (bytes: Uint8Array, head: Uint8Array): boolean => head.every((byte, at) => bytes[at] === byte);

const hex = (text: string): Uint8Array => Uint8Array.from(text.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
