const bytesOfHex = (hex: string): Uint8Array =>
  Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const repeated = (byte: number, times: number): Uint8Array => new Uint8Array(times).fill(byte);

/** RFC 4231, section 4: all seven test cases of HMAC-SHA-256; case 5 gives the first 128 bits only. */
export const RFC_4231 = [
  {
    name: "4.2 a short key",
    key: repeated(0x0b, 20),
    data: text("Hi There"),
    mac: "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7",
  },
  {
    name: "4.3 a key shorter than the digest",
    key: text("Jefe"),
    data: text("what do ya want for nothing?"),
    mac: "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
  },
  {
    name: "4.4 data longer than 64 bytes",
    key: repeated(0xaa, 20),
    data: repeated(0xdd, 50),
    mac: "773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe",
  },
  {
    name: "4.5 a counting key",
    key: bytesOfHex("0102030405060708090a0b0c0d0e0f10111213141516171819"),
    data: repeated(0xcd, 50),
    mac: "82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b",
  },
  {
    name: "4.6 a digest that is cut to 128 bits",
    key: repeated(0x0c, 20),
    data: text("Test With Truncation"),
    mac: "a3b6167473100ee06e0c796c2955552b",
  },
  {
    name: "4.7 a key longer than a block",
    key: repeated(0xaa, 131),
    data: text("Test Using Larger Than Block-Size Key - Hash Key First"),
    mac: "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54",
  },
  {
    name: "4.8 key and data longer than a block",
    key: repeated(0xaa, 131),
    data: text(
      "This is a test using a larger than block-size key and a larger than block-size data. " +
        "The key needs to be hashed before being used by the HMAC algorithm.",
    ),
    mac: "9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2",
  },
] as const;

/** @example hexOf(new Uint8Array([10, 255])) // "0aff" */
export const hexOf = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
