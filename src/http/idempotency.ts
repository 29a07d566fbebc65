import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { WishKey } from "#shared/shop/booking.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import { problem } from "#src/http/problem.ts";

/** 1 to 200 visible characters, quoted as a structured string (RFC 9651 section 3.3.3) or bare. */
const QUOTED = /^"((?:[ !#-[\]-~]|\\["\\]){1,200})"$/;
const BARE = /^[!#-+\--~]{1,200}$/;

/** The wish that a request names by its `Idempotency-Key` header and its body; the refusal is the finished answer. */
export async function readWishKey(request: Request, text: string, scope: string): Promise<Outcome<WishKey, Response>> {
  const key = keyIn(request.headers.get("idempotency-key") ?? "");
  if (key === null) return refuse(problem({ status: 400, reason: "idempotency-key-needed", detail: DETAIL }));
  return accept({ scope, key, fingerprint: await sha256Hex(text) });
}

const DETAIL =
  "Send an Idempotency-Key header of 1 to 200 characters, new for each wish; repeat it when you repeat the request.";

function keyIn(header: string): string | null {
  const quoted = QUOTED.exec(header)?.[1];
  if (quoted !== undefined) return quoted.replaceAll(/\\(["\\])/g, "$1");
  return BARE.test(header) ? header : null;
}
