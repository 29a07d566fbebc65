/** Bytes of each of the two numbers of a signature on P-256. */
const NUMBER_BYTES = 32;

/**
 * An ECDSA signature with both of its numbers written at full length, as the library expects them. DER drops leading
 * zeros (ITU-T X.690, 8.3.2), so that about one signature in 128 has a shorter number. Null where it is no such signature.
 */
export function evenSignature(der: Uint8Array): Uint8Array | null {
  const first = numberAt(der, 2);
  const second = first === null ? null : numberAt(der, first.end);
  if (first === null || second === null || second.end !== der.length || der[0] !== 0x30 || der[1] !== der.length - 2)
    return null;
  const [r, s] = [written(first.value), written(second.value)];
  return Uint8Array.from([0x30, r.length + s.length, ...r, ...s]);
}

function numberAt(der: Uint8Array, at: number) {
  const length = der[at + 1];
  if (der[at] !== 0x02 || length === undefined || length === 0) return null;
  const end = at + 2 + length;
  const digits = der.subarray(at + 2, end);
  const value = digits.subarray(
    Math.max(
      0,
      digits.findIndex((byte) => byte !== 0),
    ),
  );
  return end > der.length || value.length > NUMBER_BYTES ? null : { value, end };
}

/** With the zero before it, so that it never reads as negative. */
const written = (value: Uint8Array): readonly number[] => [
  0x02,
  NUMBER_BYTES + 1,
  ...new Array<number>(NUMBER_BYTES + 1 - value.length).fill(0),
  ...value,
];
