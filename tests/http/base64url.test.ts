import { Buffer } from "node:buffer";
import * as fc from "fast-check";
import { expect, it } from "vitest";
import { decodeBase64url, encodeBase64url } from "#src/http/base64url.ts";

const utf8 = (text: string) => new TextEncoder().encode(text);

it.each([
  ["", ""],
  ["f", "Zg"],
  ["fo", "Zm8"],
  ["foo", "Zm9v"],
  ["foob", "Zm9vYg"],
  ["fooba", "Zm9vYmE"],
  ["foobar", "Zm9vYmFy"],
])("writes %j as %j: RFC 4648 section 10, without padding", (text, encoded) => {
  expect(encodeBase64url(utf8(text))).toBe(encoded);
  expect(decodeBase64url(encoded)).toEqual(utf8(text));
});

it("agrees with Node about any bytes", () => {
  fc.assert(
    fc.property(fc.uint8Array(), (bytes) => {
      expect(encodeBase64url(bytes)).toBe(Buffer.from(bytes).toString("base64url"));
      expect(decodeBase64url(Buffer.from(bytes).toString("base64url"))).toEqual(bytes);
    }),
  );
});

it.each(["Zh", "Zg==", "Z", "Zm9 v", "+/+/", "é"])("has one text for each value, so %j is none", (text) => {
  expect(decodeBase64url(text)).toBeNull();
});
