import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";

/** Why no passkey can be made or used at an address. */
export type NoPasskeys = "numeric-address" | "insecure-address";

/**
 * The name that passkeys of this address are made for (RP ID), or why there can be none: it has to be a host name
 * (Web Authentication Level 3, 4, "RP ID"), and the page secure, which plain http is on this machine's own name only.
 * @example passkeySite("https://bench.example") // the rpId "bench.example"
 */
export function passkeySite(origin: string): Outcome<{ readonly rpId: string; readonly origin: string }, NoPasskeys> {
  const { hostname, protocol } = new URL(origin);
  if (/^[\d.]+$|^\[/.test(hostname)) return refuse("numeric-address");
  const isLocal = hostname === "localhost" || hostname.endsWith(".localhost");
  return protocol === "https:" || isLocal ? accept({ rpId: hostname, origin }) : refuse("insecure-address");
}

/** The same machine by its name; null for any other numeric address. @example namedOrigin("http://127.0.0.1:8787") // "http://localhost:8787" */
export function namedOrigin(origin: string): string | null {
  const url = new URL(origin);
  return url.hostname === "127.0.0.1" || url.hostname === "[::1]" ? origin.replace(url.hostname, "localhost") : null;
}
