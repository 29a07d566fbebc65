import { encodeBase64url } from "#src/http/base64url.ts";
import { hmacSha256 } from "#src/http/signed-token.ts";

/**
 * Who asks, for caps: a keyed hash, so that no address is stored or can be found again by trying all of them.
 * The edge sets CF-Connecting-IP itself. On one machine a client may send any; that server listens on loopback only.
 */
export async function sourceOf(request: Request, key: string): Promise<string> {
  const address = request.headers.get("cf-connecting-ip") ?? "local";
  const bytes = new TextEncoder();
  return encodeBase64url(await hmacSha256(bytes.encode(key), bytes.encode(`source.${address}`))).slice(0, 22);
}
