/** Unpadded base64url, RFC 4648 section 5. @example encodeBase64url(new Uint8Array([251, 255])) // "-_8" */
export function encodeBase64url(bytes: Uint8Array): string {
  const binary = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** The bytes, or `null` unless the text is exactly what `encodeBase64url` would write for them. */
export function decodeBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  try {
    const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
    return encodeBase64url(bytes) === text ? bytes : null;
  } catch {
    return null;
  }
}
